import { Link } from '@tanstack/react-router';

/** Shown when a screen breaks: nothing entered is lost, and this says so. */
export function PageFault({ error, reset }: { error: unknown; reset: () => void }) {
  return (
    <div className="stack notice" role="alert">
      <h1>This screen can’t be shown</h1>
      <p>What you entered is saved. Try again; if it comes back, reload the page.</p>
      <details>
        <summary>What broke</summary>
        <p className="small">{error instanceof Error ? error.message : String(error)}</p>
      </details>
      <div className="row">
        <button type="button" className="button" onClick={reset}>
          Try again
        </button>
        <Link to="/">Back to the pieces</Link>
      </div>
    </div>
  );
}
