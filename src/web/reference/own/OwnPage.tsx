import { Link, useSearch } from '@tanstack/react-router';
import { useCallback, useEffect, useState } from 'react';
import { useKnowledgeAnew } from '../../knowledge/useKnowledge.ts';
import { useReadOnly } from '../../record/useReadOnly.ts';
import { Notice } from '../../shell/Notice.tsx';
import { usePageTitle } from '../../shell/usePageTitle.ts';
import type { OwnKind } from './fieldShapes.ts';
import { OwnEditor } from './OwnEditor.tsx';
import { listOwn, type OwnEntries, undoOwn } from './ownServer.ts';
import { SettledCases } from './SettledCases.tsx';
import './own.css';

const titles: Record<OwnKind, [string, string]> = {
  sign: ['Add a sign of your own', 'Change a sign of your own'],
  shop: ['Add a shop of your own', 'Change a shop of your own'],
};

/** One’s own signs and shops: what there is, and the sheet to add or change one. */
export function OwnPage() {
  const { kind, id, proposal } = useSearch({ from: '/reference/own' });
  const anew = useKnowledgeAnew();
  const readOnly = useReadOnly() !== null;
  const [entries, setEntries] = useState<OwnEntries>();
  const [trouble, setTrouble] = useState('');
  const look = useCallback(async () => {
    const answer = await listOwn();
    if (answer.ok) setEntries(answer.entries);
    setTrouble(answer.ok ? '' : (answer.faults[0]?.message ?? ''));
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another address may follow on a change, so the list is read anew
  useEffect(() => void look(), [look, kind, id]);
  const title = kind === undefined ? 'Your own additions' : titles[kind][id === undefined ? 0 : 1];
  usePageTitle(title, 'Reference');
  if (entries === undefined) return <Notice title={trouble === '' ? 'One moment' : trouble} />;
  const undo = async () => {
    const answer = await undoOwn();
    if (answer.ok) {
      setEntries(answer.entries);
      await anew();
    } else setTrouble(answer.faults.map((fault) => fault.message).join(' '));
  };
  const found = kind === undefined ? undefined : entries[`${kind}s`].find((entry) => entry.id === id);
  return (
    <div className="own stack">
      <p>
        <Link to="/reference" search={{ shelf: kind === 'shop' ? 'shops' : 'signs' }}>
          Back to the reference books
        </Link>
      </p>
      <h1>{title}</h1>
      <p className="said">
        What you add is kept apart from the program’s own files, weighed like them, and marked as yours
        wherever it is named: on these pages, beside the sign in the examination, and in every opinion.
      </p>
      <p role="status" className="doubt">
        {trouble}
      </p>
      {kind !== undefined && readOnly ? (
        <p className="said">This record is open read-only: nothing can be added to it or changed in it.</p>
      ) : kind === undefined ? (
        <>
          <OwnList entries={entries} undo={undo} readOnly={readOnly} />
          <SettledCases readOnly={readOnly} />
        </>
      ) : id !== undefined && found === undefined ? (
        <p className="said">
          There is no such entry of your own: perhaps it was removed, or the change taken back.
        </p>
      ) : (
        <OwnEditor
          key={`${kind} ${id} ${proposal}`}
          kind={kind}
          id={id}
          entry={found ?? {}}
          proposal={proposal}
        />
      )}
    </div>
  );
}

type OwnListProps = { entries: OwnEntries; undo: () => Promise<void>; readOnly: boolean };

function OwnList({ entries, undo, readOnly }: OwnListProps) {
  const list = (kind: OwnKind, name: string) => (
    <section className="stack-tight">
      <h2>{name}</h2>
      {entries[`${kind}s`].length === 0 ? <p className="soft">None yet.</p> : null}
      <ul className="bare-list own-list">
        {entries[`${kind}s`].map((entry) => (
          <li key={String(entry.id)}>
            <Link to="/reference" search={{ [kind]: String(entry.id) }}>
              {String(entry.name)}
            </Link>{' '}
            {readOnly ? null : (
              <Link
                className="button plain"
                to="/reference/own"
                search={{ kind, id: String(entry.id) }}
                aria-label={`Change: ${String(entry.name)}`}
              >
                Change
              </Link>
            )}
          </li>
        ))}
      </ul>
      {readOnly ? null : (
        <p>
          <Link className="button quiet" to="/reference/own" search={{ kind }}>
            {titles[kind][0]}
          </Link>
        </p>
      )}
    </section>
  );
  return (
    <>
      {entries.fault === undefined ? null : (
        <p className="caution" role="alert">
          {entries.fault}
        </p>
      )}
      {list('sign', 'Signs')}
      {list('shop', 'Shops and regions')}
      {entries.canUndo ? (
        <p>
          <button type="button" className="button quiet" onClick={() => void undo()}>
            Take the last change back
          </button>
        </p>
      ) : null}
    </>
  );
}
