import type { KnowledgeFile } from '../../src/knowledge/readEntries.ts';

/** A small set of knowledge files without a fault, for planting faults in. Its figures are made up for the tests. */
export const soundKnowledge: readonly KnowledgeFile[] = [
  {
    path: 'alterations/chairs.yaml',
    text: `alterations:
  - id: leg-pieced
    name: Leg pieced
    what: The foot of a leg was renewed.
    class: repair
    happened: { period: "10, 5–20", later: "5, 2–9" }
    changes:
      front-leg: { to: repair, in100: "50, 30–70" }
    honestContrast: An honest piecing is not hidden.
    tellOwner: Say which leg was pieced.
    desirability: It matters little when sound.
    basis: { by: judgement, why: "Made up for a test." }
`,
  },
  {
    path: 'forms/stool.yaml',
    text: `id: stool
name: Stool
family: seating
sides: seated
what: A seat for one without a back.
styleSpan: [1700, 1800]
features:
  - id: seat
    name: Seat
    options: [{ id: wood, name: Wood }, { id: rush, name: Rush }]
parts:
  - { id: front-leg-left, kind: front-leg, name: Left front leg, renewed: "4, 2–8" }
  - { id: rush-seat, kind: rush-seat, name: Rush seat, renewed: "80, 60–95", when: { seat: [rush] } }
alterations: [leg-pieced]
measures:
  - { id: height, name: Height, how: Measure at the front., typicalMm: 430, lowMm: 380, highMm: 480 }
drawing:
  - { part: front-leg-left, view: front, path: "M 0 0 L 0 height" }
basis: { by: judgement, why: "Made up for a test." }
`,
  },
  {
    path: 'judged-apart/alterations.yaml',
    text: `alterations:
  - { id: leg-pieced, happened: { period: { A: "20, 10–36", B: "34, 20–50" } }, changes: { front-leg: { B: "50, 30–70" } } }
`,
  },
  {
    path: 'judged-apart/renewals.yaml',
    text: `renewals:
  - { id: front-leg, renewed: { seating: { A: "15, 8–26" } } }
`,
  },
  {
    path: 'judged-apart/saw-marks.yaml',
    text: `signs:
  - { id: leg-square, shows: { machine-copy: { A: "80, 60–92" } } }
  - { id: saw-arcs, shows: { out-of-use: { A: "20, 10–30" } } }
`,
  },
  { path: 'making.yaml', text: soundMaking() },
  {
    path: 'shops/mill-lane.yaml',
    text: `id: mill-lane
name: Mill Lane
kind: workshop
invented: true
place: Nowhere
years: [1740, 1780]
forms: [stool]
share: "2, 1–4"
what: A shop made up for a test.
habits:
  - { sign: leg-square, on: [front-leg], shows: "90, 70–97" }
basis: { by: judgement, why: "Made up for a test." }
`,
  },
  {
    path: 'sign-drawings/saws.yaml',
    text: `drawings:
  - id: saw-arcs-drawn
    signs: [saw-arcs]
    title: Arcs of a circular saw
    what: Curved lines cross a board.
    strokes:
      - { as: line, d: M 0 0 L 50 50 }
`,
  },
  {
    path: 'signs-not-drawn.yaml',
    text: `reasons:
  - id: by-touch
    because: Fingers tell it.
    signs: [leg-square]
`,
  },
  {
    path: 'signs/saw-marks.yaml',
    text: `family: saw-marks
name: Saw marks
signs:
  - id: leg-square
    name: Square legs
    look: The legs are square in section.
    mistakenFor: [saw-arcs]
    on: [front-leg]
    hangsOn: making
    minutes: 1
    shows:
      period: "40, 20–60"
      bench-copy: "40, 20–60"
      machine-copy: "50, 30–70"
      to-deceive: "45, 25–65"
    basis: { by: judgement, why: "Made up for a test." }
  - id: saw-arcs
    name: Arcs of a circular saw
    look: Curved lines of one radius cross the face.
    mistakenFor: [scratches of a plane]
    on: [whole]
    hangsOn: part-year
    minutes: 2
    span: { earliest: 1814, commonFrom: 1830 }
    shows:
      in-use: "30, 15–50"
      out-of-use: "1, 0.3–3"
    basis: { source: saw-book, at: "p. 3", why: "Made up for a test." }
`,
  },
  {
    path: 'sources.yaml',
    text: `works:
  - id: saw-book
    type: book
    title: A book of saws
    note: Made up for a test.
    read: whole
  - id: wood-book
    type: book
    title: A book of woods
    note: It was made up for a test.
    read: whole
`,
  },
  {
    path: 'woods.yaml',
    text: `woods:
  - { id: elm-grey, name: Grey elm, botanical: Ulmus grisea,
      shrinkage: { radialPercent: 4.2, tangentialPercent: 9.5, source: wood-book, at: "p. 9", read: memory } }
  - { id: oak-grey, name: Grey oak, botanical: Quercus grisea,
      coefficient: { radial: 0.0018, tangential: 0.0037, source: wood-book, at: "p. 9", read: memory },
      note: Made up for a test. }
`,
  },
  { path: 'measurements.yaml', text: soundMeasurements() },
];

function soundMeasurements(): string {
  const on = '{ by: judgement, why: Made up for a test. }';
  const figure = (fields: string) => `{ ${fields}, by: judgement, why: Made up for a test. }`;
  const [left, spread, value] = ['medianMm: 1, factor: 2', 'mean: 1, sd: 2', 'value: 2'].map(figure);
  const share = figure('value: 0.5');
  const across = '{ signs: [], present: one-piece }';
  return `outlines: { signs: [saw-arcs], leaves: { machine: ${left}, template: ${left}, eye: ${left} },
  templateShare: ${share}, mostRatio: ${value}, basis: ${on} }
darkening: { signs: [], aged: ${spread}, alike: ${spread}, within: ${figure('from: 0, to: 9')}, mostRatio: ${value}, basis: ${on} }
wear: { where-used: [], where-not-used: [], natural: ${spread}, imitated: ${spread}, mostRatio: ${value}, basis: ${on} }
tool-marks: { signs: [{ sign: saw-arcs, kinds: [circular-saw] }], basis: ${on} }
grain: { across: { cuff: ${across}, leg: ${across}, veneer: ${across}, other: ${across} }, basis: ${on} }
roundness: { top: [leg-square], turning: [], basis: ${on} }
panel: { panel: [], drawer-bottom: [], round-top: [], board: [], basis: ${on} }
seat-width: { signs: [], alteration: leg-pieced, widerMm: ${value}, mostShare: ${share}, basis: ${on} }
scale: { cardPx: ${value}, cardMm: ${value}, ruleMm: ${value}, markPx: ${value}, tracedMm: ${value}, lensPercent: ${value}, basis: ${on} }
`;
}

function soundMaking(): string {
  const odds = (name: string) =>
    `  ${name}: { name: ${name}, period: 50, bench-copy: 20, machine-copy: 20, to-deceive: 10, why: Made up for a test. }`;
  const rows = (keys: string, lines: [string, string]) =>
    keys
      .split(' ')
      .map(
        (key) => `  ${key}: { ${lines[0]}: [[0, 0.1], [2000, 0.2]], ${lines[1]}: [[0, 0.3], [2000, 0.4]] }`,
      )
      .join('\n');
  const others = 'to-deceive-thorough to-deceive-ordinary repair improve other-old';
  const copies =
    'bench-copy-thorough bench-copy-ordinary machine-copy to-deceive-thorough to-deceive-ordinary';
  return `startingOdds:
${['sceptical', 'even', 'trusting'].map(odds).join('\n')}
defaultOdds: even
provincialLagYears: 20
whenMade:
  bench-copy: [[1850, 0], [1900, 1]]
  machine-copy: [[1850, 0], [1900, 1]]
  to-deceive: [[1850, 0], [1900, 1]]
thorough: { bench-copy: "30, 20–40", to-deceive: "30, 20–40" }
spared: { period: "10, 5–20", later: "10, 5–20" }
reused: { period: "1, 0.5–2", bench-copy: "1, 0.5–2", machine-copy: "1, 0.5–2", to-deceive: "9, 5–20", ofOldStock: "40, 30–50" }
imitation: { bench-copy: "45, 30–60", to-deceive: "70, 50–85", shown: "70, 50–85", hidden: "15, 5–30" }
oldStock: { period: "1, 0.5–2", bench-copy: "4, 2–8", to-deceive: "30, 20–40" }
tooling:
${rows(`period later ${copies}`, ['hand', 'earlyMachine'])}
ageing:
${rows(`period bench-copy machine-copy scrubbed ${others}`, ['natural', 'imitated'])}
use:
${rows(`used spared ${others}`, ['natural', 'imitated'])}
sureness:
  plain: { there: "98, 96–99", notThere: "2, 1–4" }
  fairly: { there: "88, 80–94", notThere: "12, 6–20" }
  hint: { there: "68, 58–78", notThere: "32, 22–42" }
groupTogether: "70, 50–85"
habitTogether: "90, 80–95"
alikeTogether: "60, 40–80"
outsideTheList: "2, 0.5–5"
scrubbed: "3, 1–7"
campaigns: { reglued: { name: Reglued, inACentury: "60, 40–80" } }
expected: { hardly ever: "4, 1–10", seldom: "12, 5–22", sometimes: "30, 16–46", often: "60, 42–76", nearly always: "90, 78–97" }
lookedOver: { original: "92, 84–97", repaired: "35, 20–52", altered: "35, 20–52", married: "35, 20–52", copied: "85, 74–93", faked: "75, 58–88" }
pooling:
  asked: 2026-11-30
  judges: { A: { who: Made up for a test., weight: 1 }, B: { who: Made up for a test., weight: 1 } }
  house: 1
  widened: 1
  by: judgement
  why: Made up for a test.
basis: { by: judgement, why: "Made up for a test." }
`;
}
