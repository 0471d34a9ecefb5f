import { describe, expect, it } from 'vitest';
import { soundEntries } from './entry.ts';
import { readEntries } from './readEntries.ts';

const kinds = `kinds:
  - { id: backboard, in: [bare-wood, boards] }
  - { id: finial }
  - { id: shelf, in: [boards] }
`;

const sign = (on: string) => `family: saws
name: Saws
signs:
  - id: arcs
    name: Arcs of a saw
    look: Rake a light along it.
    on: [${on}]
    hangsOn: tooling
    minutes: 1
    shows: { hand: "1, 0.3–3", early-machine: "40, 25–55", modern-machine: "60, 40–75" }
`;

const alteration = `alterations:
  - id: boards-renewed
    name: Boards renewed
    what: Boards were renewed.
    class: repair
    happened: { period: "9, 4–18", later: "2, 0.5–5" }
    changes:
      shelf: { to: other-old, in100: "20, 10–34" }
      boards: { to: repair, in100: "60, 42–76" }
      finial: { to: improve, in100: "5, 2–10" }
    honestContrast: New boards left clean.
    tellOwner: The boards are later.
    desirability: A little less desired.
`;

const shop = `id: mill-lane
name: Mill Lane
kind: workshop
place: Mill Lane
years: [1760, 1800]
forms: [chest]
share: "2, 0.5–5"
what: It kept to its own ways.
habits:
  - { sign: arcs, on: [boards, finial], shows: "60, 42–76" }
  - { sign: arcs, shows: "60, 42–76" }
`;

/** The entries as they come out of the reader, with or without the list of kinds. */
function entriesOf(files: Record<string, string>, withKinds = true) {
  const all = withKinds ? { 'part-kinds.yaml': kinds, ...files } : files;
  return readEntries(Object.entries(all).map(([path, text]) => ({ path, text }))).entries;
}

const onOf = (on: string, withKinds = true) =>
  soundEntries(entriesOf({ 'signs/saws.yaml': sign(on) }, withKinds), 'sign')[0]?.value.on;

describe('a group stands for its kinds', () => {
  it('among the parts a sign can be on', () => {
    expect(onOf('boards')).toEqual(['backboard', 'shelf']);
  });

  it('once, where a kind is named beside its group or two groups share it', () => {
    expect(onOf('shelf, boards, bare-wood')).toEqual(['shelf', 'backboard']);
  });

  it('and leaves kinds, the whole piece and names it does not know as they are', () => {
    expect(onOf('finial, whole, bored')).toEqual(['finial', 'whole', 'bored']);
  });

  it('among the parts an alteration changes, where a kind named beside its group keeps its own figure', () => {
    const changes = soundEntries(entriesOf({ 'alterations/cases.yaml': alteration }), 'alteration')[0]?.value
      .changes;
    expect(changes).toEqual({
      backboard: { to: 'repair', in100: '60, 42–76' },
      shelf: { to: 'other-old', in100: '20, 10–34' },
      finial: { to: 'improve', in100: '5, 2–10' },
    });
  });

  it('among the parts a habit is seen on, and a habit of every part stays one', () => {
    const habits = soundEntries(entriesOf({ 'shops/mill-lane.yaml': shop }), 'shop')[0]?.value.habits;
    expect(habits?.map((habit) => habit.on)).toEqual([['backboard', 'shelf', 'finial'], undefined]);
  });
});

it('does nothing where no kinds are listed', () => {
  expect(onOf('boards', false)).toEqual(['boards']);
});
