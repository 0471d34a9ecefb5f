import { readFile } from 'node:fs/promises';
import Papa from 'papaparse';
import { beforeAll, describe, expect, it } from 'vitest';
import { csvTables } from '../../src/interchange/csvTables.ts';
import { iiifManifest } from '../../src/interchange/iiifManifest.ts';
import { linkedArt } from '../../src/interchange/linkedArt.ts';
import { terms } from '../../src/interchange/linkedArtTerms.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import { type Piece, piece } from '../../src/piece/piece.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';
import { examplePiece, photoOf } from '../kits/opinions.ts';

const known: { knowledge: Knowledge; of: Piece; shapes: { linkedArt: Shapes; iiif: IiifShapes } } =
  {} as never;
const base = 'https://records.example.org/chair';

beforeAll(async () => {
  known.knowledge = await houseKnowledge();
  known.shapes = JSON.parse(
    await readFile(new URL('../reference/openRecordShapes.json', import.meta.url), 'utf8'),
  );
  const armchair = await examplePiece('armchair');
  const marks = [
    { id: 'm', number: 1, kind: 'point', points: [[0.999, 0.5]], words: 'A plugged hole.' },
    {
      id: 'n',
      number: 2,
      kind: 'outline',
      points: [
        [0.1, 0.2],
        [0.5, 0.2],
        [0.5, 0.6],
      ],
      words: 'A patch.',
    },
  ];
  known.of = piece.parse({
    ...armchair,
    title: 'Armchair, "so called"; =1+1\nwith two lines',
    photos: { b: photoOf('b', { marks: marks as never }), a: photoOf('a', { asPlate: false }) },
    measures: { height: { id: 'height', mm: 943, sigmaMm: 1, asEntered: '37 1/8' } },
    worth: { lowCents: 450_000, highCents: 600_000, definition: 'Fair market value.' },
    opinion: { ...armchair.opinion, years: [1765, 1795] },
  });
}, 60_000);

describe('tables', () => {
  it('hold every value of the piece, and are read back as they were by another hand', () => {
    const tables = csvTables(known.of, { part: (id) => id, sign: (id) => id });
    const cells = [...tables.values()].flatMap((text) => {
      expect(text.startsWith('\uFEFF')).toBe(true);
      const { data, errors } = Papa.parse<string[]>(text.slice(1).trimEnd());
      expect(errors).toEqual([]);
      expect(new Set(data.map((row) => row.length)).size).toBe(1);
      return data.flat();
    });
    const all = new Set(cells.map((cell) => cell.replace(/^'(?=[=+\-@])/, '')));
    const missed = leavesOf(known.of).filter(
      (value) => ![...all].some((cell) => cell === value || cell.split('; ').includes(value)),
    );
    expect(missed).toEqual([]);
    expect([...tables.keys()]).toEqual(
      expect.arrayContaining(['piece.csv', 'findings.csv', 'photos.csv', 'owners.csv', 'measures.csv']),
    );
  });

  it('hand a spreadsheet no formula', () => {
    const text =
      csvTables({ ...known.of, title: '=HYPERLINK("x")' }, { part: String, sign: String }).get('piece.csv') ??
      '';
    expect(text).toContain(`"'=HYPERLINK(""x"")"`);
    expect(text).not.toMatch(/(^|,)"?=/m);
  });
});

describe('Linked Art', () => {
  const records = () =>
    linkedArt(known.of, known.knowledge, base, [{ id: 'left-arm', name: 'left arm', why: 'Renewed.' }]);

  it('each record has what the schema asks for and nothing it does not know', () => {
    expect(
      [...records().values()].flatMap((record) => linkedArtFaults(record, known.shapes.linkedArt)),
    ).toEqual([]);
    expect(records().size).toBe(2 + Object.keys(known.of.owners).length);
  });

  it('money is the examiner’s assignment; in a dimension, or without a label, it would be caught', () => {
    const object = records().get('object.json') as unknown as {
      attributed_by: { assigned: { value: number } }[];
      dimension: unknown[];
    };
    expect(object.attributed_by.map(({ assigned }) => assigned.value)).toEqual([4500, 6000]);
    const money = { type: 'MonetaryAmount', value: 1, currency: terms.dollars };
    expect(linkedArtFaults({ ...object, dimension: [money] }, known.shapes.linkedArt)).not.toEqual([]);
    expect(linkedArtFaults({ ...object, _label: undefined }, known.shapes.linkedArt)).not.toEqual([]);
    expect(linkedArtFaults({ ...object, price: 1 }, known.shapes.linkedArt)).not.toEqual([]);
  });

  it('a renewed part is an object of its own, part of the piece, and its wood is not the piece’s', () => {
    const part = records().get('part-left-arm.json') as unknown as { part_of: { id: string } };
    expect(part.part_of.id).toBe(`${base}/object`);
  });

  it('points only to terms whose ids were read in its documentation', () => {
    const used = [...JSON.stringify([...records().values(), terms]).matchAll(/aat\/(\d+)/g)].map(
      ([, id = '']) => id,
    );
    const ofKnowledge = JSON.stringify([known.knowledge.forms, known.knowledge.woods]);
    const unread = [...new Set(used)].filter(
      (id) => known.shapes.linkedArt.terms[id] === undefined && !ofKnowledge.includes(id),
    );
    expect(unread).toEqual([]);
  });
});

describe('IIIF', () => {
  it('the manifest has what the standard asks of each thing, one canvas a plate, and marks within their picture', () => {
    const manifest = iiifManifest(known.of, base);
    expect(iiifFaults(manifest, known.shapes.iiif)).toEqual([]);
    expect(manifest.items).toHaveLength(1);
    const [canvas] = manifest.items;
    expect(canvas?.items[0]?.items[0]?.body.id).toBe(`${base}/plates/1.jpg`);
    const targets =
      canvas?.annotations?.[0]?.items.map(({ target }) =>
        (target.split('=')[1] ?? '').split(',').map(Number),
      ) ?? [];
    expect(targets).toHaveLength(2);
    for (const [x = 0, y = 0, wide = 0, high = 0] of targets) {
      expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
      expect(Math.min(wide, high)).toBeGreaterThanOrEqual(1);
      expect([x + wide <= 320, y + high <= 200]).toEqual([true, true]);
    }
  });

  it('a manifest without a label, or with a plain one, would be caught', () => {
    const manifest = iiifManifest(known.of, base);
    expect(iiifFaults({ ...manifest, label: undefined }, known.shapes.iiif)).not.toEqual([]);
    expect(iiifFaults({ ...manifest, label: 'A chair' }, known.shapes.iiif)).not.toEqual([]);
  });
});

function leavesOf(value: unknown): string[] {
  if (value === null || value === undefined) return [];
  if (typeof value !== 'object') return [String(value)];
  return Object.values(value).flatMap(leavesOf);
}

type Shapes = {
  everyRecordHas: string[];
  context: string;
  fieldsOfAnObject: string[];
  oneOnly: string[];
  moneyStandsOnlyIn: string;
  terms: Record<string, string>;
};

type IiifShapes = { context: string; must: Record<string, string[]> };

function linkedArtFaults(record: object, shapes: Shapes): string[] {
  const top = record as Record<string, unknown>;
  const faults = shapes.everyRecordHas
    .filter((field) => top[field] === undefined)
    .map((field) => `lacks ${field}`);
  if (top['@context'] !== shapes.context) faults.push('another context');
  if (top.type === 'HumanMadeObject')
    faults.push(
      ...Object.keys(top)
        .filter((field) => top[field] !== undefined && !shapes.fieldsOfAnObject.includes(field))
        .map((field) => `unknown ${field}`),
    );
  walk(record, (key, value) => {
    if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
      const { type, id } = value as { type?: string; id?: string };
      if (type === undefined) faults.push(`${key} has no type`);
      if (type === 'MonetaryAmount' && key !== shapes.moneyStandsOnlyIn) faults.push(`money in ${key}`);
      if (id !== undefined && !/^https?:\/\//.test(id)) faults.push(`${id} is no address`);
    }
    if (shapes.oneOnly.includes(key) && Array.isArray(value)) faults.push(`${key} is a list`);
    if (/^(begin|end)_of_the_/.test(key) && !/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}Z$/.test(String(value)))
      faults.push(`${key}: ${value}`);
  });
  return faults;
}

function iiifFaults(manifest: object, { context, must }: IiifShapes): string[] {
  const faults = (manifest as { '@context'?: string })['@context'] === context ? [] : ['another context'];
  const look = (value: unknown) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return;
    const { type = '', label, id } = value as { type?: string; label?: unknown; id?: string };
    for (const field of must[type] ?? [])
      if ((value as Record<string, unknown>)[field] === undefined) faults.push(`${type} lacks ${field}`);
    if (label !== undefined && !Object.values(label as object).every((each) => Array.isArray(each)))
      faults.push(`${type}: a label is words by language`);
    if (must[type] !== undefined && !/^https?:\/\//.test(id ?? '')) faults.push(`${type}: no address`);
  };
  look(manifest);
  walk(manifest, (_, value) => look(value));
  return faults;
}

function walk(value: unknown, see: (key: string, value: unknown) => void, key = ''): void {
  if (typeof value !== 'object' || value === null) return;
  for (const [name, each] of Object.entries(value)) {
    const at = Array.isArray(value) ? key : name;
    if (typeof each === 'object' && each !== null) see(at, each);
    else see(at, each);
    walk(each, see, at);
  }
}
