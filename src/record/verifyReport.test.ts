import { readdirSync } from 'node:fs';
import { rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { handSigned, signedFiles } from '../../test/kits/handSigned.ts';
import { temporaryFolder } from '../../test/kits/temporaryFolder.ts';
import { withCheckLine } from '../opinion/pdf/checkLine.ts';
import { issuedPaths, sha256Of } from './issuedFolder.ts';
import { recordFile } from './openDataFolder.ts';
import { openSqlite } from './sqlite/openSqlite.ts';
import { verifyReport } from './verifyReport.ts';

const withoutRecord =
  'only the examiner’s record can tell. That a file is whole does not show who made it; anybody who knows how can make a whole file.';
const grouped = (hex: string) => (hex.match(/.{16}/g) ?? []).join(' ');

/** What a file says of itself, as the lines tell it. */
const says = ({ line }: Pick<ReturnType<typeof signedFiles>, 'line'>, acts = '3 acts') => [
  `It says: revision ${line.revision} of ${line.piece}, made from ${acts} of the record ${line.record}.`,
  `  Head of the record: ${grouped(line.head)}`,
  `  Hash of what it rests on: ${grouped(line.contents)}`,
];
const whole = 'The file is whole: no byte of it was changed since its check line was written.';
const changed = 'The file was changed since it was issued: its bytes do not come to its check line.';
const noLine =
  'The file has no check line of an issued opinion: it is a draft, was saved anew by another program, was changed, or is not of Underside.';
const hashOf = (bytes: Uint8Array) => `SHA-256 of the file: ${sha256Of(bytes)}`;
const draft = Buffer.from('%PDF-1.7\nA draft.\nstartxref\n0\n%%EOF\n');

function altered(pdf: Buffer): Buffer {
  const copy = Buffer.from(pdf);
  copy[12] = 'B'.charCodeAt(0);
  return copy;
}

/** Copies of a record that this process put aside to look at, and did not take away. */
const leftBehind = () =>
  readdirSync(tmpdir()).filter((name) => name.startsWith(`underside-look-${process.pid}-`));

describe('a report beside the record that issued it', () => {
  it('is the one that was issued, and the record holds', async () => {
    const made = await handSigned();
    const { dir, pdf } = made;
    expect(await verifyReport(pdf, dir)).toEqual({
      verdict: 'issued',
      lines: [
        whole,
        ...says(made),
        hashOf(pdf),
        `It is revision 1 of one, as Perrin Halloway (invented) signed it on 2026-11-25: the record in ${dir} has the hash of this file, byte for byte.`,
        'The record holds, and its first 3 acts come to the head printed in the file.',
        'This shows that file and record agree. Whether the record itself was kept honestly it can’t show; a copy that somebody else has kept can.',
      ],
    });
    expect(leftBehind()).toEqual([]);
  });

  it('is refuted where a byte of it was changed; the hash of the one that was signed is told', async () => {
    const made = await handSigned();
    const { dir, pdf } = made;
    const bytes = altered(pdf);
    expect(await verifyReport(bytes, dir)).toEqual({
      verdict: 'refuted',
      lines: [
        changed,
        ...says(made),
        hashOf(bytes),
        `The record in ${dir} never signed this file, byte for byte.`,
        `As revision 1 of one it signed a file of SHA-256 ${sha256Of(pdf)}.`,
      ],
    });
  });

  it('is refuted where it is of a revision or a piece that was never signed', async () => {
    const made = await handSigned();
    const { dir, line } = made;
    for (const lie of [{ revision: 2 }, { piece: 'two' }]) {
      const bytes = withCheckLine(draft, { ...line, ...lie });
      const { verdict, lines } = await verifyReport(bytes, dir);
      expect(verdict).toBe('refuted');
      const { piece, revision } = { ...line, ...lie };
      expect(lines.slice(-2)).toEqual([
        `The record in ${dir} never signed this file, byte for byte.`,
        `It signed no revision ${revision} of ${piece}.`,
      ]);
    }
  });

  it('is refuted where it is a draft', async () => {
    const { dir } = await handSigned();
    expect(await verifyReport(draft, dir)).toEqual({
      verdict: 'refuted',
      lines: [noLine, hashOf(draft), `The record in ${dir} never signed this file, byte for byte.`],
    });
  });

  it('is refuted where the record signed a file without a check line', async () => {
    const { dir } = await handSigned({ revision: { pdfSha256: sha256Of(draft) } });
    expect((await verifyReport(draft, dir)).verdict).toBe('refuted');
  });

  it('is refuted where the record does not hold, each fault at its place', async () => {
    const made = await handSigned();
    const { dir, pdf } = made;
    await rm(join(issuedPaths(dir).revision('one', 1), 'case.json'));
    const { verdict, lines } = await verifyReport(pdf, dir);
    expect(verdict).toBe('refuted');
    expect(lines.slice(5)).toEqual([
      `It is revision 1 of one, as Perrin Halloway (invented) signed it on 2026-11-25: the record in ${dir} has the hash of this file, byte for byte.`,
      'But the record does not hold:',
      'issued/one/1: Its file case.json is not there.',
    ]);
  });

  it('is refuted where the head printed in it is not that of the record', async () => {
    const lie = 'b'.repeat(64);
    const { dir, pdf } = await handSigned({ line: { head: lie, count: 1 } });
    const { verdict, lines } = await verifyReport(pdf, dir);
    expect(verdict).toBe('refuted');
    expect(lines).toContain(
      'The head printed in it is not that of the record: of the first 1 act some were changed, removed or put in since it was signed.',
    );
    expect(lines).toContain('issued/one/1: What its PDF says of itself is not what the record says of it.');
  });

  it('of which the record can’t be read is refuted, with why', async () => {
    const { dir, pdf } = await handSigned();
    await writeFile(
      recordFile(dir),
      'a letter to the editor, long enough to be looked at as a file of something',
    );
    const { verdict, lines } = await verifyReport(pdf, dir);
    expect(verdict).toBe('refuted');
    expect(lines.slice(5)).toEqual([
      'The record can’t be read:',
      `${recordFile(dir)}: ${recordFile(dir)} is not a record of Underside, or is damaged: put back a copy of it.`,
    ]);
  });

  it('of which an act can’t be read is refuted, with why', async () => {
    const { dir, pdf } = await handSigned();
    const database = openSqlite(recordFile(dir));
    const [{ sql }] = database
      .prepare<{ sql: string }>("SELECT sql FROM sqlite_schema WHERE name = 'events_stay'")
      .all() as [{ sql: string }];
    database.exec('DROP TRIGGER events_stay');
    database.exec('PRAGMA ignore_check_constraints = ON');
    database.exec("UPDATE events SET body = 'torn' WHERE position = 2");
    database.exec(sql);
    database.close();
    const { verdict, lines } = await verifyReport(pdf, dir);
    expect(leftBehind()).toEqual([]);
    expect(verdict).toBe('refuted');
    expect(lines).toContain('The record can’t be read:');
    expect(lines.join('\n')).toContain('This act is not as it was recorded: it cannot be read.');
  });
});

describe('a report beside another record, or none', () => {
  it('can’t be told of, whole as it is, and is refuted where it is not', async () => {
    const [made, other] = [await handSigned(), await handSigned()];
    const here = other.dir;
    const another = `It says that it is of the record ${made.recordId}, and the one in ${here} is ${other.recordId}: ${withoutRecord}`;
    expect(await verifyReport(made.pdf, here)).toEqual({
      verdict: 'cannot-tell',
      lines: [whole, ...says(made), hashOf(made.pdf), another],
    });
    const bytes = altered(made.pdf);
    expect(await verifyReport(bytes, here)).toEqual({
      verdict: 'refuted',
      lines: [changed, ...says(made), hashOf(bytes), another],
    });
  });

  it('is the one that was issued where it was brought in with its revision, but for the head', async () => {
    const made = await handSigned({}, 'another record');
    const { dir, pdf } = made;
    const { verdict, lines } = await verifyReport(pdf, dir);
    expect(verdict).toBe('issued');
    expect(lines).toContain(
      'The record holds. The revision was signed in the record another record and brought in here, so the head printed in it can’t be compared.',
    );
    // Its head is that of another record: that it is not this one's is no fault.
    const lie = { head: 'b'.repeat(64) };
    const headless = await handSigned({ line: lie, revision: lie }, 'another record');
    expect((await verifyReport(headless.pdf, headless.dir)).verdict).toBe('issued');
  });

  it('can’t be told of without a record, and is refuted where its bytes differ from its line', async () => {
    const { pdf, ...made } = signedFiles({ id: 'one' }, { hash: 'a'.repeat(64), count: 1 }, 'some record');
    const none = join(await temporaryFolder(), 'none');
    const there = `There is no record in ${none} to ask whether it was issued: ${withoutRecord}`;
    expect(await verifyReport(pdf, none)).toEqual({
      verdict: 'cannot-tell',
      lines: [whole, ...says(made, '1 act'), hashOf(pdf), there],
    });
    const bytes = altered(pdf);
    expect(await verifyReport(bytes, none)).toEqual({
      verdict: 'refuted',
      lines: [changed, ...says(made, '1 act'), hashOf(bytes), there],
    });
    expect(await verifyReport(draft, none)).toEqual({
      verdict: 'cannot-tell',
      lines: [noLine, hashOf(draft), there],
    });
  });
});
