import { beforeAll, describe, expect, it } from 'vitest';
import type { OpinionDocument } from '../../src/opinion/opinionDocument.ts';
import { owner } from '../../src/piece/owner.ts';
import { type Piece, piece } from '../../src/piece/piece.ts';
import { readingIds } from '../../src/piece/readings.ts';
import { priceComparable, type Worth, worth } from '../../src/piece/worth.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';
import { examplePiece, opinionMaker, photoOf, textOf, textsOf } from '../kits/opinions.ts';

const known = {} as { opinionOn: ReturnType<typeof opinionMaker>; chair: Piece };

beforeAll(async () => {
  known.opinionOn = opinionMaker(await houseKnowledge());
  known.chair = await examplePiece('side-chair');
}, 60_000);

const owners = {
  a: owner.parse({ id: 'a', name: 'Ada Model', bornIn: 1890, diedIn: 1971, began: [1924, 1924], ended: [1971, 1971], how: 'purchased', evidence: 'names-it', source: 'receipt, seen', photos: ['paper'] }), // biome-ignore format: a row
  b: owner.parse({ id: 'b', name: 'Josiah Example', bornIn: 1520, began: [1540, 1540], ended: [1560, 1560], sure: 'hint' }), // biome-ignore format: a row
};

const stated = (more: Partial<Worth> = {}): Worth =>
  worth.parse({
    definition: 'Fair market value.',
    definitionFrom: 'The regulation.',
    market: 'Auction.',
    approaches: { sales: { used: true, why: 'Chairs are sold.' }, cost: { used: false, why: 'Nobody makes it anew.' } }, // biome-ignore format: a row
    byReading: Object.fromEntries(readingIds.map((id) => [id, { lowCents: 100_000, highCents: 200_000 }])),
    assumptions: 'None.',
    lowCents: 120_000,
    highCents: 180_000,
    conclusion: 'The sales agree.',
    ...more,
  });

const sales = {
  y: priceComparable.parse({ id: 'y', name: 'Unsold', date: '2025' }),
  x: priceComparable.parse({ id: 'x', name: 'A chair like it', priceCents: 100_000, date: '2025', where: 'lot 12', premiumIncluded: false, premiumPercent: 25, adjustments: [{ why: 'mended rail', percent: 10 }] }), // biome-ignore format: a row
};

const with_ = (more: Partial<Piece>) => known.opinionOn(piece.parse({ ...known.chair, ...more }));
const section = (document: OpinionDocument, id: string) => {
  const found = document.sections.find((each) => each.id === id);
  return found === undefined ? undefined : textsOf(found).join('\n');
};

describe('owners in the opinion', () => {
  it('prints the statement with its notes, the plate of a paper, its key, and what does not agree', () => {
    const photos = { paper: photoOf('paper') };
    const told = section(with_({ owners, photos, plateOrder: ['paper'] }), 'provenance');
    expect(told).toContain('Possibly Josiah Example [born 1520], 1540 until 1560 (note 1). Purchased by Ada Model [1890–1971], 1924 until 1971 (note 2).'); // biome-ignore format: a row
    expect(told).toContain('Note 2: Paper of the time that names this piece: receipt, seen. Plate 1.');
    expect(told).toContain('by the findings it was made');
    expect(told).toContain('from 1560 to 1924');
    expect(told).toContain('How it is written: Earliest first.');
  });

  it('says nothing of owners where none is entered, or none has a name', () => {
    expect(section(with_({}), 'provenance')).toBeUndefined();
    expect(section(with_({ owners: { a: owner.parse({ id: 'a' }) } }), 'provenance')).toBeUndefined();
  });
});

describe('worth in the opinion', () => {
  it('prints the worth, the value meant, approaches with reasons, the ranges, and what hangs on the doubt', () => {
    const told = section(with_({ worth: stated(), comparables: sales }), 'worth') ?? '';
    for (const words of [
      '$1,200 to $1,800',
      'Fair market value.',
      'Comparison of sales: used. Chairs are sold.',
      'Cost approach: left out. Nobody makes it anew.',
      'The sales compared say $1,375;',
      'Nothing of it hangs on the doubt.',
      'whether the income approach was used',
    ])
      expect(told).toContain(words);
    expect(told).toContain('knows no price');
  });

  it('tells what hangs on the doubt where readings differ in worth, and no average while one lacks its range', () => {
    const high = { lowCents: 900_000, highCents: 1_100_000, words: '' };
    const byReading = { ...stated().byReading, 'period-repaired': high };
    expect(section(with_({ worth: stated({ byReading }) }), 'worth')).toMatch(/\$[\d,]+ hangs on the doubt/);
    const told = section(with_({ worth: stated({ byReading: { 'later-bench-copy': high } }) }), 'worth');
    expect(told).toContain('no average over them is told');
    expect(told).not.toContain('on average');
  });

  it('sets each sale with its adjustments in an appendix, and leaves out what can’t be reckoned with', () => {
    const told = section(with_({ comparables: sales }), 'sales') ?? '';
    expect(told).toContain('A chair like it, 2025, lot 12');
    expect(told).toContain('$1,000, so $1,250');
    expect(told).toContain('mended rail: +$125');
    expect(told).not.toContain('Unsold');
  });

  it('still says that no value is stated where none is, and no longer where one is', () => {
    expect(textOf(with_({}))).toContain('It states no value');
    expect(section(with_({}), 'worth')).toBeUndefined();
    expect(textOf(with_({ worth: stated() }))).not.toContain('It states no value');
  });
});
