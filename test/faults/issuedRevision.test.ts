import { readdir, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkFile, withCheckLine } from '../../src/opinion/pdf/checkLine.ts';
import type { RecordedEvent } from '../../src/piece/event.ts';
import { chainStart, linkEvent } from '../../src/record/chain.ts';
import { issuedPaths, writeRevision } from '../../src/record/issuedFolder.ts';
import { openSqlite } from '../../src/record/sqlite/openSqlite.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { verifyReport } from '../../src/record/verifyReport.ts';
import { changeIssuedBytes } from '../kits/changedIssuedBytes.ts';
import { act, finding, step } from '../kits/drafts.ts';
import { signedRecord } from '../kits/signedRecord.ts';

describe('a signed revision', () => {
  it('is whole in its folder before the record speaks of it, and is said by both', async () => {
    const { dir, store, log, pdf } = await signedRecord();
    const folder = issuedPaths(dir).revision('one', 1);
    expect((await readdir(folder)).sort()).toEqual([
      'case.json',
      'knowledge.json',
      'manifest.json',
      'opinion.json',
      'opinion.pdf',
      'photos.json',
      'piece.json',
      'weighing.json',
    ]);
    expect((await readFile(join(folder, 'opinion.pdf'))).equals(Buffer.from(pdf))).toBe(true);
    expect(store.piece('one')?.piece.opinion).toMatchObject({ status: 'signed', signedOn: '2026-11-25' });
    log.close();
    expect(await verifyRecord(dir)).toMatchObject({ ok: true, revisions: 1, faults: [], remarks: [] });
  });

  it('is not undone, and neither is what it rests on', async () => {
    const { store, log } = await signedRecord();
    expect(store.piece('one')).toMatchObject({ canUndo: false, undoStopsAt: 'signature' });
    expect(store.undo('one', step())).toMatchObject({
      ok: false,
      faults: [{ message: expect.stringContaining('Undo stops at a signature') }],
    });
    store.append([finding('one', 'c', 'splat')]);
    expect(store.undo('one', step()).ok).toBe(true);
    expect(store.undo('one', step()).ok).toBe(false);
    expect(store.piece('one')?.piece.issued['1']).toBeDefined();
    log.close();
  });

  it('is never made out of words: no act that is handed in signs anything', async () => {
    const { store, log } = await signedRecord();
    const issued = store.piece('one')?.piece.issued['1'] ?? null;
    const forged = [
      act('one', 'opinion-issued', [{ path: ['issued', '2'], to: issued }]),
      act('one', 'opinion-changed', [{ path: ['issued', '1'] }]),
      act('one', 'opinion-changed', [{ path: ['opinion', 'status'], to: 'signed' }]),
      act('one', 'opinion-signed', [{ path: ['opinion'], to: { status: 'signed' } }]),
      act('two', 'piece-opened', [
        { path: [], to: { id: 'two', form: 'side-chair', issued: { 1: issued } } },
      ]),
    ];
    for (const one of forged)
      expect(store.append([one])).toMatchObject({
        ok: false,
        faults: [{ code: 'record.signed-by-its-own-way' }],
      });
    log.close();
  });

  it('is not signed where the piece was changed meanwhile; its files are set aside', async () => {
    const { dir, store, log, parts, sign } = await signedRecord();
    store.append([
      act('one', 'revision-begun', [{ path: ['opinion', 'status'], to: 'draft' }]),
      act('one', 'opinion-changed', [
        { path: ['opinion', 'isNew'], to: 'x' },
        { path: ['opinion', 'why'], to: 'y' },
      ]),
    ]);
    const make = parts.makeRevision;
    parts.makeRevision = async (of, onStep) => {
      const made = await make(of, onStep);
      store.append([finding('one', 'late', 'splat')]);
      return made;
    };
    await expect(sign()).rejects.toThrow('changed while it was being signed');
    expect(Object.keys(store.piece('one')?.piece.issued ?? {})).toEqual(['1']);
    expect(await readdir(issuedPaths(dir).piece('one'))).toEqual(['1']);
    expect(await readdir(issuedPaths(dir).setAside)).toHaveLength(1);
    log.close();
  });

  it('that was cut off before its act stays harmless: it is remarked on, set aside by the next, never written over', async () => {
    const { dir, store, log, sign } = await signedRecord();
    await writeRevision(dir, 'one', 2, new Map([['opinion.pdf', Buffer.from('cut off')]]));
    expect(await verifyRecord(dir)).toMatchObject({
      ok: true,
      remarks: [expect.stringContaining('issued/one/2 was never signed')],
    });
    store.append([
      act('one', 'revision-begun', [{ path: ['opinion', 'status'], to: 'draft' }]),
      act('one', 'opinion-changed', [{ path: ['opinion', 'why'], to: 'y' }]),
    ]);
    await sign();
    const [aside = ''] = await readdir(issuedPaths(dir).setAside);
    expect(await readFile(join(issuedPaths(dir).setAside, aside, 'opinion.pdf'), 'utf8')).toBe('cut off');
    log.close();
    expect(await verifyRecord(dir)).toMatchObject({ ok: true, revisions: 2, remarks: [] });
  });

  it('is missed where its folder, or one of its files, is gone', async () => {
    const { dir, log } = await signedRecord();
    log.close();
    const folder = issuedPaths(dir).revision('one', 1);
    await rm(join(folder, 'weighing.json'));
    expect((await verifyRecord(dir)).faults).toMatchObject([
      { code: 'verify.revision-changed', message: 'Its file weighing.json is not there.' },
    ]);
    await rm(folder, { recursive: true });
    expect((await verifyRecord(dir)).ok).toBe(false);
  });
});

describe('a report beside its record', () => {
  it('shows a chain rewritten with hashes that fit, against the head printed in it', async () => {
    const { dir, log, pdf } = await signedRecord();
    log.close();
    rewriteChain(dir, (text) =>
      text
        .replace('"sign":"a"', '"sign":"z"')
        .replace('findings","a@splat', 'findings","z@splat')
        .replace('"id":"a@splat"', '"id":"z@splat"'),
    );
    const { verdict, lines } = await verifyReport(pdf, dir);
    expect(verdict).toBe('refuted');
    expect(lines.join('\n')).toContain('The head printed in it is not that of the record');
  });

  it('refutes a file made again by somebody who knows how the check line is made', async () => {
    const { dir, log, pdf } = await signedRecord();
    log.close();
    const line = checkFile(pdf)?.line;
    if (line === undefined) throw new Error('no check line');
    const forged = withCheckLine(Buffer.from(pdf).subarray(), { ...line, count: line.count + 1 });
    expect(checkFile(forged)?.whole).toBe(true);
    expect((await verifyReport(forged, dir)).verdict).toBe('refuted');
    const alone = await verifyReport(forged, join(dir, 'none'));
    expect(alone.verdict).toBe('cannot-tell');
    expect(alone.lines.join('\n')).toContain('does not show who made it');
  });

  it('can’t tell beside another record, and says of a draft that it has no check line', async () => {
    const [first, second] = [await signedRecord(), await signedRecord()];
    first.log.close();
    second.log.close();
    expect((await verifyReport(first.pdf, second.dir)).verdict).toBe('cannot-tell');
    const draft = Buffer.from('%PDF-1.7\nstartxref\n0\n%%EOF\n');
    const { verdict, lines } = await verifyReport(draft, first.dir);
    expect(verdict).toBe('refuted');
    expect(lines[0]).toContain('no check line');
  });
});

describe('one byte changed behind the program’s back', () => {
  it('is found in a report, a stored revision and a photo, 50 times of 50 each', () => changeIssuedBytes(50));
});

/** Writes all acts anew with their bodies changed and every hash made to fit, as somebody could who has the program. */
function rewriteChain(dir: string, change: (body: string) => string): void {
  const database = openSqlite(join(dir, 'record.db'), { readOnly: false });
  for (const { name } of database.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'").all() as {
    name: string;
  }[])
    database.exec(`DROP TRIGGER ${name}`);
  const rows = database.prepare('SELECT position, body FROM events ORDER BY position').all() as {
    position: number;
    body: string;
  }[];
  const heads = new Map<string, RecordedEvent>();
  for (const { position, body } of rows) {
    const { seq: _s, before: _b, hash: _h, ...draft } = JSON.parse(change(body)) as RecordedEvent;
    const linked = linkEvent(draft, heads.get(draft.device) ?? chainStart);
    heads.set(draft.device, linked);
    database
      .prepare('UPDATE events SET hash = ?, body = ? WHERE position = ?')
      .run(linked.hash, JSON.stringify(linked), position);
  }
  database.close();
}
