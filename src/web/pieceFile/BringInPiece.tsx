import { Link } from '@tanstack/react-router';
import { useId, useState } from 'react';
import { counted } from '../../ground/words.ts';

type Came = { piece: string; added: number; known: number; photos: number; remarks: string[] };
type Fault = { code: string; message: string };
type Stands =
  | { now: 'idle' }
  | { now: 'running' }
  | { now: 'done'; came: Came }
  | { now: 'failed'; faults: Fault[]; file: File };

/** Brings the file of a piece into this record; says what came, or why not. */
export function BringInPiece({ onCame }: { onCame: () => void }) {
  const [stands, setStands] = useState<Stands>({ now: 'idle' });
  const field = useId();
  const bringIn = async (file: File, beside: boolean) => {
    setStands({ now: 'running' });
    const next = await hand(file, beside);
    setStands(next);
    if (next.now === 'done') onCame();
  };
  return (
    <details>
      <summary>Bring in a piece from a file</summary>
      <div className="field">
        <label htmlFor={field}>A piece taken out of another record, as one file</label>
        <span className="note">
          Acts that are here already are passed over, so that the same file twice does no harm.
        </span>
        <input
          id={field}
          type="file"
          accept=".zip,application/zip"
          disabled={stands.now === 'running'}
          onChange={(change) => {
            const [file] = change.target.files ?? [];
            if (file !== undefined) void bringIn(file, false);
            change.target.value = '';
          }}
        />
      </div>
      <div aria-live="polite">
        {stands.now === 'running' ? <p>Reading the file and checking all of it…</p> : null}
        {stands.now === 'done' ? <CameWords came={stands.came} /> : null}
      </div>
      {stands.now === 'failed' ? (
        <div className="caution" role="alert">
          {stands.faults.map(({ message }) => (
            <p key={message}>{message}</p>
          ))}
          {stands.faults[0]?.code === 'adopt.both-changed' ? (
            <button type="button" className="button quiet" onClick={() => void bringIn(stands.file, true)}>
              Bring it in beside
            </button>
          ) : null}
        </div>
      ) : null}
    </details>
  );
}

function CameWords({ came: { piece, added, known, photos, remarks } }: { came: Came }) {
  const acts = (n: number) => counted(n, 'act');
  return (
    <>
      <p>
        {added === 0
          ? `Nothing new: ${known === 1 ? 'its one act is' : `all ${acts(known)} are`} here already.`
          : `Brought in: ${acts(added)} and ${counted(photos, 'photo')}${known === 0 ? '' : `; ${acts(known)} were here already`}.`}{' '}
        <Link to="/piece/$id/history" params={{ id: piece }}>
          Open the piece
        </Link>
      </p>
      {remarks.map((remark) => (
        <p key={remark} className="doubt">
          {remark}
        </p>
      ))}
    </>
  );
}

async function hand(file: File, beside: boolean): Promise<Stands> {
  try {
    const answer = await fetch(`/api/piece-files${beside ? '?beside=yes' : ''}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/zip', 'x-underside': '1' },
      body: file,
    });
    if (answer.ok) return { now: 'done', came: (await answer.json()) as Came };
    const { faults } = (await answer.json()) as { faults: Fault[] };
    return { now: 'failed', faults, file };
  } catch {
    const message = 'Can’t reach Underside on this computer. Is it still running? Nothing was brought in.';
    return { now: 'failed', faults: [{ code: 'away', message }], file };
  }
}
