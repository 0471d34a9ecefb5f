import { useEffect, useRef } from 'react';
import { Progress } from '../signing/Progress.tsx';
import type { OpinionContext } from './opinionContext.ts';
import { useJob } from './useJob.ts';

/** Sets the opinion as the PDF of a draft, says how far it is, and hands it over. What was signed is handed out elsewhere. */
export function OpinionPdf({ context }: { context: OpinionContext }) {
  const { piece, used } = context;
  const { job, begin } = useJob(
    `/api/pieces/${encodeURIComponent(piece.id)}/opinion`,
    'The document could not be made:',
  );
  const link = useRef<HTMLAnchorElement>(null);
  useEffect(() => {
    if (job.stands === 'done') link.current?.click();
  }, [job]);
  const behind = used.saving !== 'saved';
  return (
    <section className="stack-tight sheet" aria-labelledby="pdf">
      <h2 id="pdf">Draft to read</h2>
      <p className="soft">
        A draft: every page says so, and so does its name. With plates, findings, reasons, sources and limits;
        it can be read aloud by a screen reader.
      </p>
      <div className="row">
        <button
          type="button"
          className="button"
          disabled={behind || job.stands === 'running'}
          onClick={() => void begin({})}
        >
          {job.stands === 'running' ? 'Making the PDF…' : 'Make PDF'}
        </button>
      </div>
      {behind ? <p className="soft small">Waits until the record has every entry.</p> : null}
      <Progress job={job} />
      <p role="status">
        {job.stands === 'done' ? (
          <>
            The draft is ready.{' '}
            <a ref={link} href={job.file} download>
              Save the draft
            </a>
          </>
        ) : null}
      </p>
    </section>
  );
}
