import { capital } from '../../../ground/words.ts';
import { PickField } from '../../fields/PickField.tsx';
import type { ExaminationContext } from '../examinationContext.ts';
import { wholeChoice } from '../PartList.tsx';

type Props = {
  context: ExaminationContext;
  part: string | undefined;
  onPick: (part: string | undefined) => void;
};

/** The part an observation is of, or the whole piece. A part the piece no longer has stays named by its id. */
export function PartOf({ context, part, onPick }: Props) {
  const known = context.parts.map(({ id, name }) => ({ id, name: capital(name) }));
  const gone = part === undefined || known.some(({ id }) => id === part) ? [] : [{ id: part, name: part }];
  return (
    <PickField
      label="Where"
      value={part ?? wholeChoice}
      options={[{ id: wholeChoice, name: 'The whole piece' }, ...known, ...gone]}
      onPick={(id) => onPick(id === wholeChoice ? undefined : id)}
    />
  );
}
