import type { Json } from '../../piece/event.ts';
import { piecePart } from '../../piece/piece.ts';
import { TextField } from '../fields/TextField.tsx';
import { TextPlace } from '../fields/TextPlace.tsx';
import type { ExamRoom } from './examRoom.ts';
import { MakesOfPart } from './MakesOfPart.tsx';

/** What is said of a part as such: whether it is there, of what wood, in the examiner's words. */
export function AboutPart({ room, part }: { room: ExamRoom; part: string }) {
  const now = room.piece.parts[part] ?? piecePart.parse({ id: part });
  const form = room.knowledge.forms[room.piece.form];
  const kind = room.parts.find((each) => each.id === part)?.kind;
  const tell = (to: Partial<typeof now>) =>
    room.record({
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
          disabled={room.readOnly}
          onChange={(event) => tell({ missing: event.target.checked })}
        />
        It is missing
      </label>
      {form !== undefined && kind !== undefined && !room.readOnly && (
        <MakesOfPart
          knowledge={room.knowledge}
          form={form}
          part={{ id: part, kind }}
          known={{ features: room.piece.features }}
          said={now.makes}
          say={(makes) => tell({ makes })}
        />
      )}
      <TextPlace key={part} name={part}>
        <TextField
          label="Wood"
          note="Several are parted by commas: walnut, white pine."
          value={now.woods.join(', ')}
          readOnly={room.readOnly}
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
          readOnly={room.readOnly}
          save={(words) => tell({ words })}
        />
      </TextPlace>
    </section>
  );
}
