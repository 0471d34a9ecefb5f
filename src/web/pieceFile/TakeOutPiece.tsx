import { useId, useState } from 'react';
import { askServer } from '../record/pieceServer.ts';

type Stands =
  | { now: 'idle' }
  | { now: 'running'; step: string; done: number; total: number }
  | { now: 'done'; file: string; missing: number }
  | { now: 'failed'; message: string };

type JobAnswer = {
  state: 'running' | 'done' | 'failed';
  step: string;
  done: number;
  total: number;
  message?: string;
};

const away = 'Can’t reach Underside on this computer. Is it still running? Try again in a moment.';

/** The piece as one file: made, then handed to the browser. */
export function TakeOutPiece({ id }: { id: string }) {
  const [stands, setStands] = useState<Stands>({ now: 'idle' });
  const label = useId();
  const begin = async () => {
    setStands({ now: 'running', step: 'Beginning', done: 0, total: 1 });
    setStands(await takeOut(id, setStands));
  };
  return (
    <section className="stack" aria-labelledby={`${label}-title`}>
      <h2 id={`${label}-title`}>This piece as one file</h2>
      <p className="soft">
        A zip with every act, the photos as they were taken, signed revisions, and a page that any browser
        shows without Underside. It can be brought into another record on the page of all pieces.
      </p>
      <div className="row">
        <button
          type="button"
          className="button quiet"
          disabled={stands.now === 'running'}
          onClick={() => void begin()}
        >
          Take out as one file
        </button>
        {stands.now === 'done' ? (
          <a className="button" href={stands.file} download>
            Save the file
          </a>
        ) : null}
      </div>
      {stands.now === 'running' ? (
        <p>
          <label htmlFor={label}>{stands.step}</label>{' '}
          <progress id={label} value={stands.done} max={stands.total} />
        </p>
      ) : null}
      {stands.now === 'done' && stands.missing > 0 ? (
        <p className="doubt">
          {stands.missing} photos that the history names were not there, and are not in the file.
        </p>
      ) : null}
      {stands.now === 'failed' ? (
        <p className="caution" role="alert">
          {stands.message}
        </p>
      ) : null}
    </section>
  );
}

async function takeOut(id: string, tell: (stands: Stands) => void): Promise<Stands> {
  const begun = await askServer<{ job: string }>(fetch, `/api/pieces/${encodeURIComponent(id)}/file`, {});
  if (begun.came !== 'answer')
    return { now: 'failed', message: begun.came === 'refusal' ? begun.message : away };
  const job = encodeURIComponent(begun.answer.job);
  for (;;) {
    const asked = await askServer<JobAnswer>(fetch, `/api/jobs/${job}`);
    if (asked.came !== 'answer')
      return { now: 'failed', message: asked.came === 'refusal' ? asked.message : away };
    const { state, step, done, total, message } = asked.answer;
    if (state === 'failed') return { now: 'failed', message: message ?? 'The file was not made.' };
    if (state === 'done') {
      const made = await askServer<{ missing: string[] }>(fetch, `/api/jobs/${job}/file`);
      const missing = made.came === 'answer' ? made.answer.missing.length : 0;
      return { now: 'done', file: `/api/piece-files/${job}`, missing };
    }
    tell({ now: 'running', step, done, total: Math.max(1, total) });
    await new Promise((resolve) => setTimeout(resolve, 250));
  }
}
