import { useEffect, useId, useRef, useState } from 'react';
import { beginJob, beginning, followJob, type RunningJob } from '../record/followJob.ts';
import { askServer } from '../record/pieceServer.ts';

type Stands =
  | { stands: 'idle' }
  | RunningJob
  | { stands: 'done'; file: string; missing: number }
  | { stands: 'failed'; message: string };

/** The piece as one file: made, then handed to the browser. */
export function TakeOutPiece({ id }: { id: string }) {
  const [job, setStands] = useState<Stands>({ stands: 'idle' });
  const label = useId();
  const left = useRef(false);
  useEffect(() => {
    left.current = false;
    return () => {
      left.current = true;
    };
  }, []);
  const begin = async () => {
    setStands(beginning);
    const ended = await takeOut(id, setStands, () => left.current);
    if (ended !== undefined) setStands(ended);
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
          disabled={job.stands === 'running'}
          onClick={() => void begin()}
        >
          Take out as one file
        </button>
        {job.stands === 'done' ? (
          <a className="button" href={job.file} download>
            Save the file
          </a>
        ) : null}
      </div>
      {job.stands === 'running' ? (
        <p>
          <label htmlFor={label}>{job.step}</label> <progress id={label} value={job.done} max={job.total} />
        </p>
      ) : null}
      {job.stands === 'done' && job.missing > 0 ? (
        <p className="doubt">
          {job.missing} photos that the history names were not there, and are not in the file.
        </p>
      ) : null}
      {job.stands === 'failed' ? (
        <p className="caution" role="alert">
          {job.message}
        </p>
      ) : null}
    </section>
  );
}

async function takeOut(
  id: string,
  tell: (job: RunningJob) => void,
  left: () => boolean,
): Promise<Stands | undefined> {
  const begun = await beginJob(`/api/pieces/${encodeURIComponent(id)}/file`, {});
  if (!('id' in begun)) return begun;
  const ended = await followJob(begun.id, tell, left);
  if (ended?.stands !== 'done') return ended;
  const made = await askServer<{ missing: string[] }>(fetch, ended.file);
  const missing = made.came === 'answer' ? made.answer.missing.length : 0;
  return { stands: 'done', file: `/api/piece-files/${encodeURIComponent(begun.id)}`, missing };
}
