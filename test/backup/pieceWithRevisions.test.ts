import { createWriteStream } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { describe, expect, it } from 'vitest';
import { ZipFile } from 'yazl';
import { pieceManifestText, readPieceManifest } from '../../src/record/pieceFile/pieceFileManifest.ts';
import { writePieceFile } from '../../src/record/pieceFile/writePieceFile.ts';
import { verifyRecord } from '../../src/record/verify.ts';
import { verifyReport } from '../../src/record/verifyReport.ts';
import { finding } from '../kits/drafts.ts';
import { sha256 } from '../kits/pictures.ts';
import { pieceRecord } from '../kits/pieceRecord.ts';
import { knowledgeOfTests, signedRecord } from '../kits/signedRecord.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';
import { testApp } from '../kits/testApp.ts';
import { unzip } from '../kits/unzip.ts';

/** The file of a piece that was signed, changed and signed again. */
async function signedTwice() {
  const first = await signedRecord();
  first.begin();
  const again = await first.sign();
  const to = join(await temporaryFolder(), 'one.zip');
  const of = { dataDir: first.dir, file: join(first.dir, 'record.db'), piece: 'one', to };
  const now = new Date('2026-11-30T12:00:00Z');
  const out = await writePieceFile({ ...of, knowledge: knowledgeOfTests, programVersion: '0.1.0', now });
  if (!out.ok) throw new Error(JSON.stringify(out.faults));
  return { ...first, file: to, pdfs: [first.pdf, again] as const };
}

describe('a piece with signed revisions, brought into another record', () => {
  it('has all of them there, whole: reprints are the bytes that were signed, and the files are told as issued', async () => {
    const first = await signedTwice();
    const second = await pieceRecord();
    const came = await second.bringIn(first.file);
    expect(came).toMatchObject({ ok: true, value: { piece: 'one', photos: 1, remarks: [] } });
    expect(second.store.piece('one')?.piece.issued).toEqual(first.store.piece('one')?.piece.issued);
    expect(second.store.piece('one')).toMatchObject({ canUndo: false, undoStopsAt: 'signature' });
    const verified = await verifyRecord(second.dir);
    expect(verified).toMatchObject({ ok: true, faults: [], revisions: 2, photos: 1 });
    expect(verified.remarks).toHaveLength(2);
    const { get } = await testApp({ parts: { store: second.store, dataDir: second.dir } });
    for (const [index, pdf] of first.pdfs.entries()) {
      const reprint = await get(`/api/pieces/one/issued/${index + 1}/opinion.pdf`);
      expect(Buffer.from(await reprint.arrayBuffer()).equals(pdf)).toBe(true);
      const { verdict, lines } = await verifyReport(pdf, second.dir);
      expect(verdict).toBe('issued');
      expect(lines.join('\n')).toContain(`signed in the record ${first.store.recordId} and brought in here`);
    }
    expect(await second.bringIn(first.file)).toMatchObject({ ok: true, value: { added: 0 } });
    expect((await verifyRecord(first.dir)).faults).toEqual([]);
  });

  it('is refused where any file of a revision was changed and the list of the zip made to fit', async () => {
    const first = await signedTwice();
    const files = await unzip(first.file);
    const second = await pieceRecord();
    const names = [...files.keys()].filter((name) => name.startsWith('issued/1/'));
    expect(names.length).toBeGreaterThan(6);
    for (const name of names) {
      const changed = Buffer.from(files.get(name) ?? '');
      const at = Math.floor(changed.length / 2);
      changed[at] = (changed[at] ?? 0) ^ 1;
      const came = await second.bringIn(await sealed(new Map([...files, [name, changed]])));
      expect([name, came.ok]).toEqual([name, false]);
      if (!came.ok)
        expect(came.faults[0]?.code, name).toMatch(/^(piece-file\.revision|adopt\.revision-differs)$/);
    }
    const lacking = new Map(files);
    lacking.delete('issued/1/piece.json');
    const came = await second.bringIn(await sealed(lacking));
    expect(!came.ok && came.faults[0]?.message).toContain('Its file piece.json is not there');
    expect(second.store.pieces()).toEqual([]);
    expect((await verifyRecord(second.dir)).ok).toBe(true);
  });

  it('is not put after what was entered here meanwhile: a revision says what stood in it to the last word', async () => {
    const first = await signedRecord();
    const of = { dataDir: first.dir, file: join(first.dir, 'record.db'), piece: 'one' };
    const rest = { knowledge: knowledgeOfTests, programVersion: '0.1.0', now: new Date() };
    const folder = await temporaryFolder();
    await writePieceFile({ ...of, ...rest, to: join(folder, 'before.zip') });
    const second = await pieceRecord();
    await second.bringIn(join(folder, 'before.zip'));
    second.enter(finding('one', 'z', 'splat', { device: 'other' }));
    first.begin();
    await first.sign();
    await writePieceFile({ ...of, ...rest, to: join(folder, 'after.zip') });
    const came = await second.bringIn(join(folder, 'after.zip'));
    expect(came).toMatchObject({ ok: false, faults: [{ code: 'adopt.signed-meanwhile' }] });
    expect((await verifyRecord(second.dir)).ok).toBe(true);
  });
});

/** A zip of files with a list that fits them. */
async function sealed(files: Map<string, Buffer>): Promise<string> {
  const manifest = readPieceManifest(files.get('manifest.json')?.toString() ?? '');
  if (manifest === undefined) throw new Error('no manifest');
  const list = [...files].flatMap(([path, bytes]) =>
    path === 'manifest.json' ? [] : [{ path, sha256: sha256(bytes), bytes: bytes.length }],
  );
  const zip = new ZipFile();
  for (const [path, bytes] of files)
    zip.addBuffer(
      path === 'manifest.json' ? Buffer.from(pieceManifestText({ ...manifest, files: list })) : bytes,
      path,
    );
  zip.end();
  const to = join(await temporaryFolder(), 'made.zip');
  await pipeline(zip.outputStream, createWriteStream(to));
  return to;
}
