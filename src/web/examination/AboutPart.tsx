import type { Json } from '../../piece/event.ts';
import { piecePart } from '../../piece/piece.ts';
import { TextField } from '../fields/TextField.tsx';
import { TextPlace } from '../fields/TextPlace.tsx';
import type { ExaminationContext } from './examinationContext.ts';
import { MakesOfPart } from './MakesOfPart.tsx';
import { ProtectedMaterials } from './ProtectedMaterials.tsx';

/** What is said of a part as such: whether it is there, of what wood, in the examiner's words. */
export function AboutPart({ context, part }: { context: ExaminationContext; part: string }) {
  const now = context.piece.parts[part] ?? piecePart.parse({ id: part });
  const form = context.knowledge.forms[context.piece.form];
  const kind = context.parts.find((each) => each.id === part)?.kind;
  const tell = (to: Partial<typeof now>) =>
    context.record({
      kind: 'part-described',
      changes: [{ path: ['parts', part], to: { ...now, ...to } as Json }],
    });
  return (
    <section className="exam-about">
      <h3>About this part</h3>
      <label className="choice">
        <input
          type="checkbox"
          checked={now.missing}
          disabled={context.readOnly}
          onChange={(event) => tell({ missing: event.target.checked })}
        />
        It is missing
      </label>
      {form !== undefined && kind !== undefined && !context.readOnly && (
        <MakesOfPart
          knowledge={context.knowledge}
          form={form}
          part={{ id: part, kind }}
          known={{ features: context.piece.features }}
          said={now.makes}
          say={(makes) => tell({ makes })}
        />
      )}
      <TextPlace key={part} name={part}>
        <TextField
          label="Wood"
          note="Several are parted by commas: walnut, white pine."
          value={now.woods.join(', ')}
          readOnly={context.readOnly}
          save={(words) =>
            tell({
              woods: words
                .split(',')
                .map((wood) => wood.trim())
                .filter((wood) => wood !== ''),
            })
          }
        />
        <TextField
          label="In words"
          value={now.words}
          readOnly={context.readOnly}
          save={(words) => tell({ words })}
        />
      </TextPlace>
      <ProtectedMaterials words={[...now.woods, now.words]} />
    </section>
  );
}
