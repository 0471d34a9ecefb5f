import { useId, useState } from 'react';

/** The keys that answer signs, for those who work without a pointer. */
export function KeysHelp() {
  const id = useId();
  const [open, setOpen] = useState(false);
  return (
    <div className="exam-keys">
      <button
        type="button"
        className="button plain"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
      >
        Keyboard shortcuts
      </button>
      <div id={id} hidden={!open} className="exam-keys-list sheet">
        <dl>
          <dt>↑ ↓</dt>
          <dd>sign before, sign after</dd>
          <dt>P A C D</dt>
          <dd>present, absent, could not tell, does not apply; the same again withdraws</dd>
          <dt>1 2 3</dt>
          <dd>plain, fairly sure, a hint</dd>
          <dt>Enter</dt>
          <dd>what to look for</dd>
          <dt>Esc</dt>
          <dd>close the part</dd>
        </dl>
        <p className="small soft">They work while a sign has the focus.</p>
      </div>
    </div>
  );
}
