import { beforeAll, describe, expect, test } from 'vitest';
import { houseKnowledge } from '../../test/kits/houseKnowledge.ts';
import { type SignDrawing, signDrawingBox } from '../knowledge/signDrawingSchema.ts';
import { signDrawingSvg } from './signDrawingSvg.ts';
import { type PlacedLabel, placeLabel } from './signLabels.ts';
import { signStrokes } from './signStrokes.ts';
import { followPath, type Trail } from './testing/followPath.ts';
import { distanceTo, isWithin } from './testing/nearTrail.ts';

const drawings: SignDrawing[] = [];
beforeAll(async () => {
  drawings.push(...Object.values((await houseKnowledge()).signDrawings ?? {}));
}, 60_000);

describe('the drawings of signs', () => {
  test('show 250 signs at the least, each drawing with words for who can’t see it', () => {
    expect(new Set(drawings.flatMap(({ signs }) => signs)).size).toBeGreaterThanOrEqual(250);
    for (const drawing of drawings) {
      const svg = signDrawingSvg(drawing);
      const leaders = (drawing.labels ?? []).filter(({ to }) => to !== undefined);
      expect(svg.match(/<path /g)).toHaveLength(signStrokes(drawing).length + leaders.length);
      expect(svg).toContain('<title id=');
      expect(drawing.what.length).toBeGreaterThan(40);
    }
  });

  test('stay on their sheet, strokes and words', () => {
    expect(drawings.flatMap((drawing) => outside(drawing))).toEqual([]);
  });

  test('no word lies on another, and no line to what is named crosses one', () => {
    expect(drawings.flatMap((drawing) => crowded(drawing))).toEqual([]);
  });

  test('every line from a word ends on something drawn', () => {
    expect(drawings.flatMap((drawing) => pointingNowhere(drawing))).toEqual([]);
  });

  test('no two are drawn alike, and the two sides of one that sets like beside unlike differ', () => {
    const seen = new Map<string, string>();
    const alike = drawings.flatMap((drawing) => {
      const drawn = signStrokes(drawing)
        .map(({ as, d }) => `${as} ${d}`)
        .join('\n');
      const other = seen.get(drawn);
      seen.set(drawn, drawing.id);
      return other === undefined ? [] : [`${drawing.id} is drawn as ${other}`];
    });
    expect(alike).toEqual([]);
    expect(drawings.filter(sidesAlike).map(({ id }) => id)).toEqual([]);
  });
});

describe('what is held of the drawings would notice', () => {
  const sound: SignDrawing = {
    id: 'a-b',
    signs: ['a'],
    title: 'A board',
    what: 'Left, a board. Right, a board with a hole.',
    strokes: ['plain 10 10 30 40', 'plain 60 10 30 40', 'hole 75 30 4'],
    labels: [
      { words: 'board', at: [25, 60], to: [25, 45] },
      { words: 'hole', at: [75, 60], to: [75, 32] },
    ],
  };
  const faultsOf = (drawing: SignDrawing) => [
    ...outside(drawing),
    ...crowded(drawing),
    ...pointingNowhere(drawing),
    ...(sidesAlike(drawing) ? ['sides alike'] : []),
  ];

  test.each<[string, Partial<SignDrawing>]>([
    ['a stroke over the edge', { strokes: [...sound.strokes, 'plain 90 10 20 4'] }],
    [
      'a curve that bulges over the edge',
      { strokes: [...sound.strokes, { as: 'line', d: 'M 40 60 Q 50 90 60 60' }] },
    ],
    ['words over the edge', { labels: [{ words: 'a very long label', at: [4, 20] }] }],
    [
      'words on words',
      {
        labels: [
          { words: 'board', at: [25, 60] },
          { words: 'aboard', at: [28, 61] },
        ],
      },
    ],
    [
      'a line through other words',
      {
        labels: [
          { words: 'board', at: [25, 66], to: [25, 45] },
          { words: 'over', at: [25, 56] },
        ],
      },
    ],
    ['a line that ends beside the board', { labels: [{ words: 'board', at: [50, 66], to: [50, 55] }] }],
    ['two sides alike', { strokes: sound.strokes.slice(0, 2) }],
  ])('%s', (_, change) => {
    expect(faultsOf(sound)).toEqual([]);
    expect(faultsOf({ ...sound, ...change })).not.toEqual([]);
  });
});

test('a title is written so that it can’t break the picture', () => {
  const drawing: SignDrawing = {
    id: 'a-b',
    signs: ['a'],
    title: 'Less < more & "so"',
    what: 'A line.',
    strokes: [{ as: 'line', d: 'M 0 0 L 1 1' }],
  };
  expect(signDrawingSvg(drawing)).toContain('Less &#60; more &#38;');
});

function trailsOf(drawing: Pick<SignDrawing, 'strokes'>): Trail[] {
  return signStrokes(drawing).flatMap(({ d }) => followPath(d));
}

function labelsOf(drawing: SignDrawing): PlacedLabel[] {
  return (drawing.labels ?? []).map(placeLabel);
}

function outside(drawing: SignDrawing): string[] {
  const { width, height } = signDrawingBox;
  const off = ([x, y]: readonly [number, number]) => x < 0 || x > width || y < 0 || y > height;
  return [
    ...trailsOf(drawing)
      .filter(({ points }) => points.some(off))
      .map(({ points }) => `${drawing.id}: a stroke at ${points.find(off)}`),
    ...labelsOf(drawing)
      .filter(({ covers: [left, top, right, bottom] }) => off([left, top]) || off([right, bottom]))
      .map(({ words }) => `${drawing.id}: the words "${words}"`),
  ];
}

function crowded(drawing: SignDrawing): string[] {
  const labels = labelsOf(drawing);
  return labels.flatMap((one, index) =>
    labels.flatMap((other, after) => {
      if (one === other) return [];
      const overlap = after > index && covers(one, other.covers);
      const crossed =
        one.leader !== undefined &&
        followPath(one.leader, 60).some(({ points }) => points.some(([x, y]) => covers(other, [x, y, x, y])));
      return [
        ...(overlap ? [`${drawing.id}: "${one.words}" lies on "${other.words}"`] : []),
        ...(crossed ? [`${drawing.id}: the line of "${one.words}" crosses "${other.words}"`] : []),
      ];
    }),
  );
}

function covers({ covers: [left, top, right, bottom] }: PlacedLabel, other: PlacedLabel['covers']): boolean {
  return left < other[2] && other[0] < right && top < other[3] && other[1] < bottom;
}

function pointingNowhere(drawing: SignDrawing): string[] {
  const trails = trailsOf(drawing);
  return (drawing.labels ?? [])
    .filter(
      ({ to }) => to !== undefined && !trails.some((each) => isWithin(each, to) || distanceTo(each, to) < 1),
    )
    .map(({ words, to }) => `${drawing.id}: "${words}" points at nothing at ${to}`);
}

/** Whether a drawing that speaks of left and right shows the same on both sides, but for where it stands. */
function sidesAlike(drawing: SignDrawing): boolean {
  if (!/\bLeft,/.test(drawing.what) || !/\bRight,/.test(drawing.what)) return false;
  const middle = signDrawingBox.width / 2;
  const [left = '', right = ''] = [true, false].map((first) => {
    const side = signStrokes(drawing).flatMap(({ as, d }) =>
      followPath(d)
        .filter(({ points }) => points.every(([x]) => x < middle === first))
        .map(({ points }) => ({ as, points })),
    );
    const from = Math.min(...side.flatMap(({ points }) => points.map(([x]) => x)));
    return (
      side
        // Grain is laid by place and never twice alike.
        .filter(({ as }) => as !== 'thin')
        .map(
          ({ as, points }) =>
            `${as} ${points.map(([x, y]) => `${Math.round(x - from)},${Math.round(y)}`).join(' ')}`,
        )
        .join('\n')
    );
  });
  return left !== '' && left === right;
}
