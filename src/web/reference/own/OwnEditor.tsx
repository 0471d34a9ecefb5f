import { useNavigate } from '@tanstack/react-router';
import { type FormEvent, useEffect, useMemo, useRef, useState } from 'react';
import { useKnowledge, useKnowledgeAnew } from '../../knowledge/useKnowledge.ts';
import { type Draft, entryOf, idFromName } from './draft.ts';
import { EditorHere } from './FieldFrame.tsx';
import { inSheetWords } from './faultWords.ts';
import { fieldShapes, type OwnKind } from './fieldShapes.ts';
import { draftKey, keepDraft, readDraft } from './keptDraft.ts';
import { OwnFields } from './OwnFields.tsx';
import { type OwnFault, putOwn, removeOwn } from './ownServer.ts';

type OwnEditorProps = {
  kind: OwnKind;
  /** The entry to change; a new one is added where it is left out. */
  id: string | undefined;
  entry: Draft;
  /** The observation that a new sign was begun from, where it was. */
  proposal?: string | undefined;
};

/** Adds or changes a sign or a shop of one’s own. What is typed stays in this browser until the program has kept it. */
export function OwnEditor({ kind, id, entry, proposal }: OwnEditorProps) {
  const { signs, shops } = useKnowledge();
  const anew = useKnowledgeAnew();
  const go = useNavigate();
  const fields = useMemo(() => fieldShapes(kind), [kind]);
  const key = draftKey(kind, id, proposal);
  const [found] = useState(() => readDraft(key));
  const [draft, setDraft] = useState<Draft>(found ?? entry);
  const [faults, setFaults] = useState<readonly OwnFault[]>([]);
  const [busy, setBusy] = useState(false);
  const told = useRef<HTMLDivElement>(null);
  const all = kind === 'sign' ? signs : shops;
  const newId = idFromName(String(draft.name ?? ''), new Set(Object.keys(all)));
  useEffect(() => {
    if (faults.length > 0) told.current?.focus();
  }, [faults]);
  const change = (to: Draft) => {
    setDraft(to);
    keepDraft(key, to);
  };
  const startAnew = () => {
    keepDraft(key, undefined);
    setDraft(entry);
    setFaults([]);
  };
  const done = async () => {
    keepDraft(key, undefined);
    await anew();
  };
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    setBusy(true);
    const answer = await putOwn(kind, id ?? newId, entryOf(fields, draft));
    setBusy(false);
    if (!answer.ok) return setFaults(answer.faults.map((fault) => inSheetWords(fault, kind)));
    await done();
    await go({ to: '/reference', search: { [kind]: id ?? newId } });
  };
  const remove = async () => {
    if (id === undefined) return;
    setBusy(true);
    const answer = await removeOwn(kind, id);
    setBusy(false);
    if (!answer.ok) return setFaults(answer.faults.map((fault) => inSheetWords(fault, kind)));
    await done();
    await go({ to: '/reference/own', search: {} });
  };
  return (
    <EditorHere value={{ kind, faults }}>
      <form className="own-editor stack" onSubmit={(event) => void keep(event)} noValidate>
        <div ref={told} tabIndex={-1} role="alert">
          {faults.length === 0 ? null : (
            <div className="caution">
              <p>
                It is not saved yet: {faults.length === 1 ? 'one thing is' : `${faults.length} things are`} to
                mend. What you typed is still here.
              </p>
              <ul>
                {faults.map((fault) => (
                  <li key={`${fault.path} ${fault.message}`}>{fault.message}</li>
                ))}
              </ul>
            </div>
          )}
        </div>
        {proposal === undefined ? null : (
          <p className="caution">
            Begun from an observation of your own. Where figures stand below, they are those its words stand
            for: put your own in their place. Once the sign is saved and answered on that piece, withdraw the
            observation there, or it counts twice.
          </p>
        )}
        {found === undefined ? null : (
          <p className="small soft">
            {proposal === undefined ? 'This is how you left it: it' : 'It'} is not saved yet.{' '}
            <button type="button" className="button plain" onClick={startAnew}>
              {id === undefined ? 'Begin with a blank one' : 'Go back to what is saved'}
            </button>
          </p>
        )}
        <OwnFields fields={fields} draft={draft} onDraft={change} />
        <p className="small soft">
          {id === undefined ? 'It will be filed under' : 'It is filed under'} <code>{id ?? newId}</code>
        </p>
        <div className="row">
          <button type="submit" className="button" disabled={busy}>
            {busy ? 'Saving…' : kind === 'sign' ? 'Save the sign' : 'Save the shop'}
          </button>
          {id === undefined ? null : (
            <button type="button" className="button plain" disabled={busy} onClick={() => void remove()}>
              Remove it
            </button>
          )}
        </div>
      </form>
    </EditorHere>
  );
}
