import type { Typed } from './useTyped.ts';

/** Text typed here before the page was left, where another value has come in since: one touch uses it, one lets it go. */
export function LeftText({ left }: { left: Typed['left'] }) {
  if (left === undefined) return null;
  return (
    <div className="row left-text" role="status">
      <span className="small">
        Typed here before the page was left, and not saved: <span className="said">{left.text}</span>
      </span>
      <button type="button" className="button quiet" onClick={left.use}>
        Use it
      </button>
      <button type="button" className="button plain" onClick={left.drop}>
        Let it go
      </button>
    </div>
  );
}
