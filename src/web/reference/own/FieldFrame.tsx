import { createContext, type ReactNode, useContext, useId } from 'react';
import type { OwnKind } from './fieldShapes.ts';
import type { OwnFault } from './ownServer.ts';
import { wordsOf } from './ownWords.ts';

/** What every field of the editor needs to know: which kind of entry it belongs to, and what is wrong with the entry. */
export const EditorHere = createContext<{ kind: OwnKind; faults: readonly OwnFault[] }>({
  kind: 'sign',
  faults: [],
});

/** What is said of one field: its own faults, and those of anything within it unless that says them itself. */
export function useFieldFaults(path: string, within: boolean): string[] {
  const { faults } = useContext(EditorHere);
  const own = path.replaceAll('.', '/');
  return faults
    .filter((fault) => fault.path === own || (within && fault.path.startsWith(`${own}/`)))
    .map((fault) => fault.message);
}

/** What an input of the field is told of its label, its note and its fault. */
export type FieldAttributes = {
  id: string;
  'aria-describedby': string | undefined;
  'aria-invalid': boolean | undefined;
  'aria-required': boolean | undefined;
};

type FrameProps = {
  path: string;
  required: boolean;
  children: (attributes: FieldAttributes) => ReactNode;
};

/** A field with its name, its note and what is wrong with it. */
export function FieldFrame({ path, required, children }: FrameProps) {
  const id = useId();
  const { kind } = useContext(EditorHere);
  const { label, note } = wordsOf(kind, plainPath(path));
  const faults = useFieldFaults(path, true);
  const described = [
    ...(note === undefined ? [] : [`${id}-note`]),
    ...(faults.length === 0 ? [] : [`${id}-fault`]),
  ].join(' ');
  return (
    <div className="field" data-faulty={faults.length > 0 ? '' : undefined}>
      <label htmlFor={id}>
        {label}
        {required ? null : <span className="soft"> (may stay blank)</span>}
      </label>
      {note === undefined ? null : (
        <span className="note" id={`${id}-note`}>
          {note}
        </span>
      )}
      {children({
        id,
        'aria-describedby': described || undefined,
        'aria-invalid': faults.length > 0 || undefined,
        'aria-required': required || undefined,
      })}
      <Faults id={`${id}-fault`} faults={faults} />
    </div>
  );
}

type SetProps = { path: string; required: boolean; within: boolean; children: ReactNode };

/** Several fields that belong together, with one name over them. */
export function FieldSet({ path, required, within, children }: SetProps) {
  const { kind } = useContext(EditorHere);
  const { label, note } = wordsOf(kind, plainPath(path));
  const faults = useFieldFaults(path, within);
  return (
    <fieldset className="own-set" data-faulty={faults.length > 0 ? '' : undefined}>
      <legend>
        {label}
        {required ? null : <span className="soft"> (may stay blank)</span>}
      </legend>
      {note === undefined ? null : <p className="soft small">{note}</p>}
      {children}
      <Faults faults={faults} />
    </fieldset>
  );
}

function Faults({ id, faults }: { id?: string; faults: readonly string[] }) {
  if (faults.length === 0) return null;
  return (
    <span className="doubt" id={id}>
      {faults.join(' ')}
    </span>
  );
}

/** `habits.2.sign` is called like `habits.sign`. */
function plainPath(path: string): string {
  return path.replaceAll(/\.\d+/g, '');
}
