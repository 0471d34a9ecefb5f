import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { expect } from 'vitest';
import type { Piece } from '../../src/piece/piece.ts';
import { datedCopies } from '../../src/record/backup/backupFolder.ts';
import { verifyBackup } from '../../src/record/backup/verifyBackup.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { act, opening } from './drafts.ts';
import {
  type Acknowledged,
  ask,
  type Besides,
  entry,
  followed,
  hand,
  type KindOfWork,
  killWhileEntering,
  photo,
} from './killWhileEntering.ts';
import { sha256 } from './pictures.ts';
import { concluded } from './signedRecord.ts';

/** A back-up is made, as the button does it. */
const backup: KindOfWork = async ({ address }, _number, acknowledged) => {
  const before = new Set(acknowledged.acts);
  const { job } = await ask<{ job: string }>(address, 'api/backups', {});
  await followed(address, job);
  const { last } = await ask<{ last: { name: string } }>(address, 'api/backups');
  acknowledged.copies.set(last.name, before);
};

/** A revision of the piece `two` is signed; before it a new one is begun where the last is signed. */
const signing: KindOfWork = async ({ address }, _number, acknowledged) => {
  const { piece } = await pieceTwo(address);
  if (piece.opinion.status === 'signed')
    await hand(
      address,
      [
        act('two', 'revision-begun', [{ path: ['opinion', 'status'], to: 'draft' }]),
        act('two', 'opinion-changed', [
          { path: ['opinion', 'isNew'], to: 'Nothing.' },
          { path: ['opinion', 'why'], to: 'To try.' },
        ]),
      ],
      acknowledged,
    );
  const id = randomUUID();
  const { job } = await ask<{ job: string }>(address, 'api/pieces/two/issue', {
    id,
    name: 'Perrin Halloway (invented)',
    day: '2026-11-25',
    who: 'P',
    device: 'tablet-1',
    at: '2026-11-25T11:00:00Z',
    seq: (await pieceTwo(address)).seq,
  });
  await followed(address, job);
  acknowledged.acts.add(id);
  acknowledged.revisions.add(Object.keys(piece.issued).length + 1);
};

/** As often of each kind. */
const mixed: readonly KindOfWork[] = [photo, backup, entry, signing, entry, photo, backup, signing];

const besides: Besides = {
  async begin({ address, disk }, acknowledged) {
    await hand(address, [opening('two'), concluded('two')], acknowledged);
    // None by itself: one that is under way already is joined, and need not hold what came after it began.
    await ask(address, 'api/backups/settings', { folder: join(disk, 'copies'), daily: false });
  },
  async afterKill({ disk }, acknowledged) {
    const folder = join(disk, 'copies');
    const copies = await datedCopies(folder);
    const [newest] = copies;
    if (newest !== undefined)
      expect((await verifyBackup(folder, newest.path)).faults, newest.name).toEqual([]);
    expect(copies.map(({ name }) => name)).toEqual(expect.arrayContaining([...acknowledged.copies.keys()]));
  },
  async atEnd({ address, disk }, acknowledged) {
    await expectCopiesWhole(join(disk, 'copies'), acknowledged);
    const { piece } = await pieceTwo(address);
    expect(Object.keys(piece.issued)).toEqual(
      expect.arrayContaining([...acknowledged.revisions].map((revision) => String(revision))),
    );
    for (const { revision, pdfSha256 } of Object.values(piece.issued)) {
      const pdf = await fetch(`${address}api/pieces/two/issued/${revision}/opinion.pdf`);
      expect(sha256(new Uint8Array(await pdf.arrayBuffer())), `revision ${revision}`).toBe(pdfSha256);
    }
  },
};

/**
 * Kills the program `rounds` times in the midst of entries, photos, back-ups and signings: none that was acknowledged may be
 * lost, and every back-up and revision that has its name must be whole.
 */
export function killInTheMix(
  rounds: number,
): Promise<{ cutOff: Record<string, number>; acknowledged: Acknowledged }> {
  return killWhileEntering(rounds, mixed, besides);
}

async function expectCopiesWhole(folder: string, { copies }: Acknowledged): Promise<void> {
  for (const { name, path } of await datedCopies(folder)) {
    expect((await verifyBackup(folder, path)).faults, name).toEqual([]);
    const log = sqliteLog(join(path, 'record.db'), { readOnly: true });
    const kept = new Set(log.pieces().flatMap((piece) => log.ofPiece(piece).map(({ event }) => event.id)));
    log.close();
    expect([...(copies.get(name) ?? [])].filter((id) => !kept.has(id))).toEqual([]);
  }
}

function pieceTwo(address: string): Promise<{ piece: Piece; seq: number }> {
  return ask(address, 'api/pieces/two');
}
