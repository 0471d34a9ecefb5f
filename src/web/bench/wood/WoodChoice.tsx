import type { Knowledge } from '../../../knowledge/schema.ts';
import { ChoiceField } from '../../fields/ChoiceField.tsx';
import { NumberField } from '../../fields/NumberField.tsx';
import { PickField } from '../../fields/PickField.tsx';

/** A wood and how its board was cut. */
export type ChosenWood = {
  wood: string;
  cut: 'flat-sawn' | 'quarter-sawn' | 'between';
  ringAngleDeg: number;
};

/** What is chosen before anything is touched: the first wood read on the piece that is known, else mahogany. */
export function woodAtFirst(knowledge: Knowledge, read: readonly string[]): ChosenWood {
  const wood = read.find((id) => knowledge.woods[id] !== undefined) ?? 'mahogany-true';
  return { wood, cut: 'flat-sawn', ringAngleDeg: 45 };
}

/** The fields of a calculation that say wood and cut. */
export function woodInput({ wood, cut, ringAngleDeg }: ChosenWood) {
  return cut === 'between' ? { wood, ringAngleDeg } : { wood, cut };
}

type Props = {
  knowledge: Knowledge;
  chosen: ChosenWood;
  onChoose: (chosen: ChosenWood) => void;
  /** False for a turning, which has its rings all round. */
  withCut?: boolean;
};

/** Which wood it is, and how its rings lie. */
export function WoodChoice({ knowledge, chosen, onChoose, withCut = true }: Props) {
  const woods = Object.values(knowledge.woods)
    .map(({ id, name, botanical }) => ({ id, name: `${name} (${botanical})` }))
    .toSorted((a, b) => (a.name < b.name ? -1 : 1));
  return (
    <>
      <PickField
        label="Wood"
        value={chosen.wood}
        options={woods}
        onPick={(wood) => onChoose({ ...chosen, wood })}
      />
      {withCut && (
        <ChoiceField
          label="How its rings lie, seen on the end grain"
          value={chosen.cut}
          save={(cut) => onChoose({ ...chosen, cut })}
          choices={[
            { id: 'flat-sawn', name: 'Along the width', note: 'Flat-sawn: the board moves most.' },
            { id: 'quarter-sawn', name: 'Upright to the width', note: 'Quarter-sawn: it moves least.' },
            { id: 'between', name: 'At a slant' },
          ]}
        />
      )}
      {withCut && chosen.cut === 'between' && (
        <NumberField
          label="Angle of the rings to the width"
          unit="degrees"
          begin={chosen.ringAngleDeg}
          min={0}
          max={90}
          onNumber={(value) => value !== undefined && onChoose({ ...chosen, ringAngleDeg: value })}
        />
      )}
    </>
  );
}
