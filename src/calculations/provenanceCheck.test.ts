import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { provenanceCheck } from './provenanceCheck.ts';
import { runById } from './runById.ts';
import { noKnowledge, outputOf } from './testing/outputOf.ts';

// Nobody has printed such a check; each case below can be gone through by hand. The form of the statement: AAM Guide (2001), as quoted in the
// Carnegie Museum of Art's drafts of 2015 and 2016 (semicolon, period, parentheses, brackets, possibly and probably: read).

type Owner = Record<string, unknown>;
const check = (owners: Owner[], made?: [number, number]) =>
  outputOf(provenanceCheck, { owners, ...(made === undefined ? {} : { made }) });
const kinds = (owners: Owner[], made?: [number, number]) =>
  check(owners, made).impossible.map(({ kind }) => kind);

describe('what can’t have been', () => {
  test.each<[string, Owner, [number, number] | undefined, string[]]>([
    ['had before it was made', { name: 'A', held: [1750, 1770] }, [1760, 1790], ['owned-before-made']],
    ['had in the first year of making', { name: 'A', held: [1760, 1770] }, [1760, 1790], []],
    ['perhaps before it was made', { name: 'A', began: [1750, 1762] }, [1760, 1790], []],
    ['held after death', { name: 'A', lived: [1741, 1809], held: [1770, 1815] }, undefined, ['after-death']],
    ['held until death', { name: 'A', lived: [1741, 1809], held: [1770, 1809] }, undefined, []],
    ['perhaps after death', { name: 'A', lived: [1741, 1809], began: [1770, 1780], ended: [1805, 1815] }, undefined, []], // biome-ignore format: a row
    ['got after death', { name: 'A', lived: [1741, 1809], held: [1812, null] }, undefined, ['after-death']],
    ['had before birth', { name: 'A', lived: [1820, null], held: [1810, 1850] }, undefined, ['before-birth']],
    ['a firm not yet there', { name: 'A', role: 'dealer', lived: [1905, null], held: [1890, 1895] }, undefined, ['firm-not-yet']], // biome-ignore format: a row
    ['a firm no more', { name: 'A', role: 'dealer', lived: [1880, 1899], held: [1890, 1902] }, undefined, ['firm-no-more']], // biome-ignore format: a row
    ['a label older than the piece', { name: 'A', role: 'dealer', lived: [1790, 1820], labelled: true }, [1880, 1910], ['label-older-than-piece']], // biome-ignore format: a row
    [
      'a label of its time',
      { name: 'A', role: 'dealer', lived: [1790, 1885], labelled: true },
      [1880, 1910],
      [],
    ],
    ['no label', { name: 'A', role: 'dealer', lived: [1790, 1820] }, [1880, 1910], []],
    ['years backwards', { name: 'A', held: [1850, 1840] }, undefined, ['dates-backwards']],
  ])('%s', (_, owner, made, wanted) => {
    expect(kinds([owner], made)).toEqual(wanted);
  });
});

describe('gaps and overlaps', () => {
  test('years in which nobody is known to have had it, with their ends', () => {
    const { gaps, overlaps } = check(
      [
        { name: 'B', held: [1860, 1901] },
        { name: 'A', held: [1790, 1830] },
      ],
      [1760, 1780],
    );
    expect(gaps).toMatchObject([
      { before: 'A', from: 1780, to: 1790 },
      { after: 'A', before: 'B', from: 1830, to: 1860 },
    ]);
    expect(overlaps).toEqual([]);
  });

  test('an open link is a gap, unless it passed straight on; doubt of dates leaves none that may not be', () => {
    const link = (direct: string) =>
      check([{ name: 'A', held: [1790, null] }, { name: 'B', held: [1860, 1901], direct }]).gaps; // biome-ignore format: a row
    expect(link('unknown')).toMatchObject([{ after: 'A', before: 'B', to: 1860 }]);
    expect(link('yes')).toEqual([]);
    expect(
      check([
        { name: 'A', ended: [1820, 1859] },
        { name: 'B', began: [1860, 1870] },
      ]).gaps,
    ).toEqual([]);
  });

  test('from when the first had it, where that is not told, is open; not where it was made for them', () => {
    const first = (how: string, made?: [number, number]) =>
      check([{ name: 'A', held: [null, 1988], how }, { name: 'B', held: [1988, null] }], made).gaps; // biome-ignore format: a row
    expect(first('', [1765, 1799])).toEqual([
      {
        before: 'A',
        from: 1799,
        words: 'From when A had it is not told, so who had it since it was made, 1765–1799, is open.',
      },
    ]);
    expect(first('made', [1765, 1799])).toEqual([]);
    expect(first('commissioned', [1765, 1799])).toEqual([]);
    // Nothing is weighed, so that it is not known from when there was something to be had.
    expect(first('')).toEqual([]);
  });

  test('two owners at once; a keeper is none', () => {
    const owners = (role: string) => [
      { name: 'A', held: [1800, 1850] },
      { name: 'B', held: [1840, 1870], role },
    ];
    expect(check(owners('owner')).overlaps).toMatchObject([{ names: ['A', 'B'], from: 1840, to: 1850 }]);
    expect(check(owners('custodian')).overlaps).toEqual([]);
  });

  test('a gap over 1933 to 1945 is remarked on, another is not', () => {
    const remarks = (from: number, to: number) =>
      check([{ name: 'A', held: [1900, from] }, { name: 'B', held: [to, 1960] }]).remarks.length; // biome-ignore format: a row
    expect([remarks(1930, 1950), remarks(1920, 1932), remarks(1946, 1950)]).toEqual([1, 0, 0]);
  });

  test('nor one between two owners at the same place, unless a place is blank or another', () => {
    const remarks = (one: string, other: string) =>
      check([
        { name: 'A', held: [1900, 1930], place: one },
        { name: 'B', held: [1950, 1960], place: other },
      ]).remarks.length;
    expect([
      remarks('Boston', ' boston'),
      remarks('Boston', 'Vienna'),
      remarks('', ''),
      remarks('Boston', ''),
    ]).toEqual([0, 1, 1, 1]);
  });

  test('the order in which owners were typed changes nothing, where their years differ', () => {
    const years = fc.uniqueArray(fc.integer({ min: 1760, max: 1960 }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(years, (begins) => {
        const rising = begins.toSorted((a, b) => a - b);
        const owners = begins.map((year) => ({
          name: `owner of ${year}`,
          held: [year, rising[rising.indexOf(year) + 1] ?? 1990],
        }));
        const { order: _, ...found } = check(owners);
        const { order: __, ...sorted } = check(
          owners.toSorted((a, b) => (a.held[0] as number) - (b.held[0] as number)),
        );
        expect(found).toEqual(sorted);
        expect([found.gaps, found.overlaps, found.impossible]).toEqual([[], [], []]);
      }),
      { seed: 5, numRuns: 80 },
    );
  });
});

test('the statement as the trade prints it, with notes and key', () => {
  const { parts, statement, order } = outputOf(provenanceCheck, provenanceCheck.example);
  expect(parts.text).toBe(
    'Possibly made for Josiah Example [1741–1809], Newport (note 1). By descent to Ruth Sample [1820–1901], Providence, 1860 until 1901 (note 2). ' +
      '(Sample & Co. [in business from 1905], Boston, dealer), 1920 until 1924 (note 3); purchased by Ada Model [1890–1971], Boston, 1924 until 1971 (note 4).',
  );
  expect(order).toEqual([0, 1, 2, 3]);
  expect(statement).toContain('Note 4: Receipt of May 3, 1924, seen.');
  expect(statement).toContain(`Key: ${parts.key}`);
  expect(check([]).statement).toBe('');
});

test.each<[Owner, string]>([
  [{ name: 'A', lived: [1850, 1820] }, 'owners[0].lived'],
  [{ name: 'A', began: [1850, 1820] }, 'owners[0].began'],
  [{ name: '' }, 'owners[0].name'],
])('%o is refused in a sentence', (owner, path) => {
  const result = runById('provenance.check', { owners: [owner] }, noKnowledge);
  if (result.ok) throw new Error('no fault');
  expect(result.faults.map((fault) => fault.path)).toEqual([path]);
});
