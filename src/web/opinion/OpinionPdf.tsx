import { useEffect, useRef } from 'react';
import type { OpinionRoom } from './opinionRoom.ts';
import { usePdfJob } from './usePdfJob.ts';

/** Sets the opinion as a PDF, says how far it is, and hands it over. */
export function OpinionPdf({ room }: { room: OpinionRoom }) {
  const { piece, used } = room;
  const { job, begin } = usePdfJob(piece.id);
  const link = useRef<HTMLAnchorElement>(null);
  useEffect(() => {
    if (job.stands === 'done') link.current?.click();
  }, [job]);
  const behind = used.saving !== 'saved';
  const draft = piece.opinion.status !== 'signed';
  return (
    <section className="stack-tight sheet" aria-labelledby="pdf">
      <h2 id="pdf">The document</h2>
      <p className="soft">
        {draft ? 'A draft: every page says so.' : 'As signed.'} With plates, findings, reasons, sources and
        limits; it can be read aloud by a screen reader.
      </p>
      <div className="row">
        <button
          type="button"
          className="button"
          disabled={behind || job.stands === 'running'}
          onClick={() => void begin()}
        >
          {job.stands === 'running' ? 'Making the PDF…' : 'Make PDF'}
        </button>
      </div>
      {behind ? <p className="soft small">Waits until the record has every entry.</p> : null}
      {job.stands === 'running' ? (
        <>
          <label htmlFor="pdf-progress" className="small">
            {job.step}
          </label>
          <progress id="pdf-progress" max={job.total} value={job.done} />
        </>
      ) : null}
      <p role="status">
        {job.stands === 'done' ? (
          <>
            It is ready.{' '}
            <a ref={link} href={job.file} download={`${fileName(piece.title)}.pdf`}>
              Save the PDF
            </a>
          </>
        ) : null}
      </p>
      {job.stands === 'failed' ? (
        <p role="alert" className="caution">
          {job.message}
        </p>
      ) : null}
    </section>
  );
}

function fileName(title: string): string {
  return title.replace(/[^\p{L}\p{N} -]+/gu, '').trim() || 'opinion';
}
