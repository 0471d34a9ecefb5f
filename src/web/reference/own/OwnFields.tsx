import type { ReactNode } from 'react';
import { citeShort } from '../../examination/figureWords.ts';
import { useKnowledge } from '../../knowledge/useKnowledge.ts';
import { ConditionsField } from './ConditionsField.tsx';
import { causesToChoose, hangsOnYears } from './causesToChoose.ts';
import type { Draft } from './draft.ts';
import { FieldByShape, type FieldProps } from './FieldByShape.tsx';
import { FieldFrame } from './FieldFrame.tsx';
import { FiguresField } from './FiguresField.tsx';
import type { FieldShape } from './fieldShapes.ts';
import { HabitsField } from './HabitsField.tsx';
import { KindsField } from './KindsField.tsx';
import { ListPicker } from './ListPicker.tsx';

type OwnFieldsProps = {
  fields: readonly FieldShape[];
  draft: Draft;
  onDraft: (draft: Draft) => void;
};

/** All fields of an entry; those that need the shelves (parts, causes, signs, works) in a way of their own. */
export function OwnFields({ fields, draft, onDraft }: OwnFieldsProps) {
  const { signs, sources, forms, alterations } = useKnowledge();
  const works = Object.keys(sources)
    .map((id) => ({ id, name: citeShort(id, sources) }))
    .sort((a, b) => a.name.localeCompare(b.name));
  const own = ({ field, path, value, onValue }: FieldProps): ReactNode | undefined => {
    const shared = { path, required: field.required, value, onValue };
    if (path === 'on') return <KindsField {...shared} />;
    if (field.name === 'sources') return <ListPicker {...shared} options={works} />;
    if (path === 'mistakenFor')
      return (
        <ListPicker
          {...shared}
          options={Object.values(signs).map(({ id, name }) => ({ id, name }))}
          ownWords
        />
      );
    if (path === 'forms')
      return <ListPicker {...shared} options={Object.values(forms).map(({ id, name }) => ({ id, name }))} />;
    if (path === 'when') return <ConditionsField {...shared} forms={forms} />;
    if (path === 'shows')
      return <FiguresField path={path} hangsOn={draft.hangsOn} value={value} onValue={onValue} />;
    if (path === 'habits') return <HabitsField path={path} value={value} onValue={onValue} />;
    if (path === 'span' && !hangsOnYears(draft.hangsOn)) return null;
    if (path === 'hangsOn') return <Pick {...shared} options={causesToChoose(alterations)} />;
    if (field.name === 'source') return <Pick {...shared} options={works} />;
    return undefined;
  };
  return fields.map((field) => (
    <FieldByShape
      key={field.name}
      field={field.name === 'basis' ? { ...field, required: true } : field}
      path={field.name}
      value={draft[field.name]}
      onValue={(value) => onDraft({ ...draft, [field.name]: value })}
      own={own}
    />
  ));
}

type PickProps = {
  path: string;
  required: boolean;
  value: unknown;
  onValue: (value: unknown) => void;
  options: readonly { id: string; name: string }[];
};

function Pick({ path, required, value, onValue, options }: PickProps) {
  return (
    <FieldFrame path={path} required={required}>
      {(attributes) => (
        <select
          {...attributes}
          value={String(value ?? '')}
          onChange={(change) => onValue(change.target.value)}
        >
          <option value="">Not said</option>
          {options.map((option) => (
            <option key={option.id} value={option.id}>
              {option.name}
            </option>
          ))}
        </select>
      )}
    </FieldFrame>
  );
}
