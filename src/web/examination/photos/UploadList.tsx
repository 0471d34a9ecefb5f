import type { PhotoUploads, Upload } from './usePhotoUploads.ts';

/** The photos on their way to the record, and those that did not get there. */
export function UploadList({ uploads }: { uploads: PhotoUploads }) {
  if (uploads.list.length === 0) return null;
  const kept = uploads.list.filter((each) => each.state === 'kept').length;
  const held = uploads.list.filter((each) => each.state === 'held').length;
  const failed = uploads.list.filter((each) => each.state === 'failed').length;
  const busy = uploads.list.length - kept - held - failed > 0;
  return (
    <section className="exam-uploads sheet" aria-label="Photos on their way">
      <p role="status">
        {kept} of {uploads.list.length} photos saved{held > 0 ? `, ${held} on this device` : ''}
        {failed > 0 ? `, ${failed} not` : ''}
        {busy ? '; the rest are on their way.' : '.'}
      </p>
      <ul>
        {uploads.list.map((upload) => (
          <Line key={upload.id} upload={upload} uploads={uploads} />
        ))}
      </ul>
      {!busy && (
        <button type="button" className="button plain" onClick={uploads.clear}>
          Clear this list
        </button>
      )}
    </section>
  );
}

function Line({ upload, uploads }: { upload: Upload; uploads: PhotoUploads }) {
  const { id, name, state, share, words } = upload;
  return (
    <li className="exam-upload" data-state={state}>
      <span className="exam-upload-name">{name}</span>
      {(state === 'going' || state === 'waiting') && (
        <progress value={share} max={1} aria-label={`${name}, handed over`} />
      )}
      {state === 'kept' && <span className="small">Saved. {words}</span>}
      {state === 'held' && (
        <span className="small">
          Kept on this device; it goes over by itself once Underside can be reached.
        </span>
      )}
      {state === 'failed' && (
        <>
          <span className="exam-upload-fault" role="alert">
            {words}
          </span>
          <button type="button" className="button quiet" onClick={() => uploads.again(id)}>
            Try again <span className="unseen">{name}</span>
          </button>
        </>
      )}
    </li>
  );
}
