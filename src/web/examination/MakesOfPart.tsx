import { isOfMake, type KnownOfPiece } from '../../knowledge/canApply.ts';
import type { Form, Knowledge } from '../../knowledge/schema.ts';
import { type PartMake, partMake } from '../../piece/partMake.ts';
import { PickField } from '../fields/PickField.tsx';

type Props = {
  knowledge: Pick<Knowledge, 'signs'>;
  form: Form;
  part: { id: string; kind: string };
  /** What is known without what was said of this part. */
  known: KnownOfPiece;
  said: Partial<Record<PartMake, boolean>>;
  say: (makes: Partial<Record<PartMake, boolean>>) => void;
};

const names: Record<PartMake, string> = {
  turned: 'Turned on a lathe',
  carved: 'Carved',
  veneered: 'Veneered',
  tacked: 'A cover is or was tacked to it',
  dovetailed: 'Dovetailed',
  nailed: 'Nailed',
};

/** How a part is made, as far as signs ask after it: what does not fit it is then not asked, and its absence says nothing. */
export function MakesOfPart({ knowledge, form, part, known, said, say }: Props) {
  const asked = partMake.options.filter((make) => makesAsked(knowledge, part.kind).has(make));
  return asked.map((make) => {
    const settled = isOfMake(make, { kind: part.kind }, form, known);
    const unsaid =
      settled === undefined ? 'Not said' : `${settled ? 'Yes' : 'No'}, by the form chosen for the piece`;
    const now = said[make];
    return (
      <PickField
        key={make}
        label={names[make]}
        value={now === undefined ? '' : now ? 'yes' : 'no'}
        options={[
          { id: '', name: unsaid },
          { id: 'yes', name: 'Yes' },
          { id: 'no', name: 'No: leave out the signs of it' },
        ]}
        onPick={(picked) => {
          const { [make]: _, ...rest } = said;
          say(picked === '' ? rest : { ...rest, [make]: picked === 'yes' });
        }}
      />
    );
  });
}

function makesAsked({ signs }: Pick<Knowledge, 'signs'>, kind: string): Set<PartMake> {
  return new Set(
    Object.values(signs).flatMap(({ make, on }) => (make !== undefined && on.includes(kind) ? [make] : [])),
  );
}
