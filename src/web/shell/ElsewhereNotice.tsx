import { useEffect, useState, useSyncExternalStore } from 'react';
import { useDesk } from '../record/DeskProvider.tsx';
import { elsewhereFile, elsewhereWords } from '../record/elsewhere.ts';

/** Entries in this browser that were made in another data folder: said, saved as a file, and only then let go. */
export function ElsewhereNotice() {
  const desk = useDesk();
  const { acts, isOther } = useSyncExternalStore(desk.watchAbove, desk.above).elsewhere;
  const [titles, setTitles] = useState<readonly string[]>([]);
  const [isSaved, setSaved] = useState(false);
  useEffect(() => {
    const now = { isShown: true };
    void Promise.all(acts.map((one) => desk.titleOf(one))).then((found) => {
      if (now.isShown) setTitles([...new Set(found.filter((title) => title !== undefined))]);
    });
    return () => {
      now.isShown = false;
    };
  }, [acts, desk]);
  if (acts.length === 0 && !isOther) return null;
  const save = () => {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([elsewhereFile(acts)], { type: 'application/json' }));
    link.download = 'underside-entries.json';
    link.click();
    URL.revokeObjectURL(link.href);
    setSaved(true);
  };
  return (
    <div className="caution stack-tight" role="status">
      {isOther ? (
        <p>
          Another data folder answers at this address than the one this page shows. Nothing is handed in to
          it: load the page anew to see it, or start Underside again with the folder this page was opened on.
        </p>
      ) : null}
      {acts.length === 0 ? null : (
        <>
          <p>{elsewhereWords(acts.length, titles)}</p>
          <div className="row">
            <button type="button" className="button quiet" onClick={save}>
              Save them as a file
            </button>
            {isSaved ? (
              <button
                type="button"
                className="button plain"
                onClick={() => void desk.forgetElsewhere(acts).then(() => setSaved(false))}
              >
                They are in the file: remove them from this browser
              </button>
            ) : null}
          </div>
        </>
      )}
    </div>
  );
}
