import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { soundKnowledge } from '../../test/architecture/soundKnowledge.ts';
import { act, finding, opening } from '../../test/kits/drafts.ts';
import { pieceRecord } from '../../test/kits/pieceRecord.ts';
import { temporaryFolder } from '../../test/kits/temporaryFolder.ts';
import { compileKnowledge } from '../knowledge/compileKnowledge.ts';
import type { Knowledge } from '../knowledge/schema.ts';
import { runPiece } from './pieceCommand.ts';
import type { Terminal } from './terminal.ts';

/** The command in this process: its exit code and what it said. */
async function piece(dataDir: string, ...args: string[]) {
  const said = { out: [] as string[], err: [] as string[] };
  const terminal: Terminal = {
    out: (line) => void said.out.push(line),
    err: (line) => void said.err.push(line),
    readInput: async () => '',
    loadKnowledge: async () => ({
      ok: true,
      knowledge: compileKnowledge(soundKnowledge).knowledge as Knowledge,
    }),
    readPicture: async () => ({ ok: false, faults: [] }),
    yearNow: () => 2026,
  };
  return { code: await runPiece(args, dataDir, terminal), ...said };
}

/** A closed record with a piece, its file taken out at the terminal, and an empty folder to bring it into. */
async function takenOut() {
  const record = await pieceRecord();
  record.enter(opening('one'), finding('one', 'a', 'splat'));
  await record.photograph('one', 'p1');
  record.close();
  const file = join(await temporaryFolder(), 'one.zip');
  const out = await piece(record.dir, 'out', 'one', file);
  return { dir: record.dir, file, out, other: join(await temporaryFolder(), 'other') };
}

describe('npx underside piece', () => {
  it('takes a piece out, brings it in with every act and photo, and is harmless twice', async () => {
    const { file, out, other } = await takenOut();
    expect(out).toMatchObject({ code: 0, err: [] });
    expect(out.out[0]).toMatch(/^Taken out into .*one\.zip: 3 acts, 1 photos, \d+\.\d MB\.$/);
    expect(await piece(other, 'in', file)).toEqual({
      code: 0,
      out: ['Brought in as one: 3 new acts, 0 that were here already, 1 photos.'],
      err: [],
    });
    expect((await piece(other, 'in', file)).out).toEqual([
      'Brought in as one: 0 new acts, 3 that were here already, 1 photos.',
    ]);
    const there = await pieceRecord(other);
    expect(there.store.piece('one')).toMatchObject({ count: 3, piece: { title: 'A chair' } });
    there.close();
  });

  it('refuses what both changed, changes nothing by it, and brings it in beside when asked', async () => {
    const { dir, file, other } = await takenOut();
    await piece(other, 'in', file);
    const retitle = (to: string) => act('one', 'piece-described', [{ path: ['title'], to }]);
    for (const [folder, title] of [
      [dir, 'Theirs'],
      [other, 'Ours'],
    ] as const) {
      const record = await pieceRecord(folder);
      record.enter(retitle(title));
      record.close();
    }
    const again = `${file}.again.zip`;
    await piece(dir, 'out', 'one', again);
    const refused = await piece(other, 'in', again);
    expect(refused).toMatchObject({ code: 2, out: [] });
    expect(refused.err.join()).toContain('both changed title. Nothing was brought in');
    const beside = await piece(other, 'in', again, '--beside');
    expect(beside).toMatchObject({ code: 0, err: [] });
    const there = await pieceRecord(other);
    const titles = there.store.pieces().map((id) => there.store.piece(id)?.piece.title);
    expect(titles).toEqual(['Ours', 'Theirs (brought in beside)']);
    there.close();
  });

  it('says in one sentence what is wrong: no file, no zip, a folder in use, a file that is there, too few words', async () => {
    const { dir, file, other } = await takenOut();
    expect(await piece(other, 'in', 'nowhere.zip')).toEqual({
      code: 2,
      out: [],
      err: ['There is no file nowhere.zip.'],
    });
    const letter = `${file}.txt`;
    await writeFile(letter, 'Dear Sir');
    const none = await piece(other, 'in', letter);
    expect([none.code, none.err.length]).toEqual([2, 1]);
    expect((await piece(dir, 'out', 'one', file)).err).toEqual([
      `${file} is there already, and nothing is ever written over: name another file.`,
    ]);
    expect((await piece(dir, 'out', 'none', `${file}.none`)).err[0]).toContain('There is no piece “none”');
    expect((await piece(dir, 'in')).err[0]).toMatch(/^Write piece out/);
    const held = await pieceRecord(other);
    const busy = await piece(other, 'in', file);
    expect(busy.code).toBe(2);
    expect(busy.err.join()).toMatch(
      /already running on the folder .* bring the file in on its first page\.$/,
    );
    held.close();
  });
});
