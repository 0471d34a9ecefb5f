import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { soundKnowledge } from '../../test/architecture/soundKnowledge.ts';
import { compileKnowledge } from '../knowledge/compileKnowledge.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { type OwnEntry, openOwnKnowledge } from './ownKnowledge.ts';

const chalk: OwnEntry = {
  id: 'own-chalk-cross',
  name: 'A cross in chalk',
  look: 'A cross in old chalk inside the leg.',
  on: ['front-leg'],
  hangsOn: 'making',
  minutes: 1,
  shows: {
    period: '10, 4–20',
    'bench-copy': '2, 0.5–5',
    'machine-copy': '1, 0.2–3',
    'to-deceive': '5, 2–10',
  },
  basis: { by: 'judgement', why: 'Seen on four chairs of one house.' },
};

const sound = compileKnowledge(soundKnowledge).knowledge as Knowledge;
const house = { knowledge: sound, files: () => soundKnowledge };

function open(folder = join(mkdtempSync(join(tmpdir(), 'own-')), 'own')) {
  const seen: Knowledge[] = [];
  return { own: openOwnKnowledge(folder, house, (one) => seen.push(one)), seen, folder };
}

it('joins a sign of one’s own to the others, marked as such, and keeps it over a restart', () => {
  const { own, seen, folder } = open();
  expect(own.knowledge().signs['own-chalk-cross']).toBeUndefined();
  expect(own.put('sign', chalk).ok).toBe(true);
  expect(own.knowledge().signs['own-chalk-cross']).toMatchObject({ mine: true, family: 'own-signs' });
  expect(seen).toHaveLength(2);
  expect(open(folder).own.knowledge().signs['own-chalk-cross']?.name).toBe('A cross in chalk');
  expect(readFileSync(join(folder, 'own.yaml'), 'utf8')).toContain('own-chalk-cross');
});

it('refuses an entry that does not hold, in words, and leaves what was', () => {
  const { own } = open();
  const refused = own.put('sign', { ...chalk, on: ['wheel'], shows: { period: '10, 4–20' } });
  expect(refused.ok).toBe(false);
  if (!refused.ok) expect(refused.faults.map((fault) => fault.message).join(' ')).toMatch(/wheel/);
  expect(own.list()).toEqual({ signs: [], shops: [], canUndo: false });
});

it('will not take the id of an entry of the program', () => {
  const { own } = open();
  expect(own.put('sign', { ...chalk, id: 'leg-square' }).ok).toBe(false);
});

it('takes a change back, one after the other', () => {
  const { own } = open();
  own.put('sign', chalk);
  own.put('sign', { ...chalk, name: 'A chalk cross' });
  expect(own.undo().ok).toBe(true);
  expect(own.knowledge().signs['own-chalk-cross']?.name).toBe('A cross in chalk');
  expect(own.undo().ok).toBe(true);
  expect(own.list()).toEqual({ signs: [], shops: [], canUndo: false });
  expect(own.undo().ok).toBe(false);
});

it('takes an entry out again', () => {
  const { own } = open();
  own.put('sign', chalk);
  expect(own.remove('sign', 'own-chalk-cross').ok).toBe(true);
  expect(own.remove('sign', 'own-chalk-cross').ok).toBe(false);
});
