import { readFile, writeFile } from 'node:fs/promises';
import { relative } from 'node:path';
import { expect } from 'vitest';
import { seededRandom } from '../../src/ground/seededRandom.ts';
import { issuedPaths } from '../../src/record/issuedFolder.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { verifyReport } from '../../src/record/verifyReport.ts';
import { signedRecord } from './signedRecord.ts';

const names = [
  'opinion.pdf',
  'opinion.json',
  'piece.json',
  'case.json',
  'weighing.json',
  'knowledge.json',
  'photos.json',
  'manifest.json',
];

/**
 * Changes one byte `trials` times each in the report, by itself and beside its record, and in the stored revision's files
 * and photo, the byte and the place by a fixed row of chances; every one must be found.
 */
export async function changeIssuedBytes(trials: number): Promise<void> {
  const { dir, log, pdf, photoPath } = await signedRecord();
  log.close();
  expect(await verifyRecord(dir)).toMatchObject({ ok: true, revisions: 1, faults: [] });
  expect((await verifyReport(pdf, dir)).verdict).toBe('issued');
  const chance = seededRandom(20261125);
  const missed: string[] = [];
  for (let trial = 0; trial < trials; trial += 1) {
    const { changed, at } = oneByteOff(Buffer.from(pdf), chance);
    if ((await verifyReport(changed, `${dir}/none`)).lines[0]?.startsWith('The file is whole'))
      missed.push(`report alone, byte ${at}`);
    if (trial % 10 === 0 && (await verifyReport(changed, dir)).verdict !== 'refuted')
      missed.push(`report with record, byte ${at}`);
  }
  const files = [...names.map((name) => `${issuedPaths(dir).revision('one', 1)}/${name}`), photoPath];
  for (let trial = 0; trial < trials; trial += 1) {
    const file = files[trial % files.length] ?? photoPath;
    const whole = await readFile(file);
    const { changed, at } = oneByteOff(whole, chance);
    await writeFile(file, changed);
    if ((await verifyRecord(dir)).ok) missed.push(`${relative(dir, file)}, byte ${at}`);
    await writeFile(file, whole);
  }
  expect(missed).toEqual([]);
  expect((await verifyRecord(dir)).ok).toBe(true);
}

function oneByteOff(bytes: Buffer, chance: () => number): { changed: Buffer; at: number } {
  const at = Math.floor(chance() * bytes.length);
  const changed = Buffer.from(bytes);
  changed[at] = ((bytes[at] ?? 0) + 1 + Math.floor(chance() * 255)) % 256;
  return { changed, at };
}
