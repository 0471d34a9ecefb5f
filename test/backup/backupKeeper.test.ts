import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { datedCopies } from '../../src/record/backup/backupFolder.ts';
import { makeBackup } from '../../src/record/backup/makeBackup.ts';
import { type KeeperParts, openBackupKeeper } from '../../src/server/backup/backupKeeper.ts';
import { openJobs } from '../../src/server/jobs.ts';
import { recordFolder } from '../kits/recordFolder.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';

const day = 86_400_000;

/** A keeper on a fresh record, with a clock that the test sets, and a way to wait until nothing is being made. */
async function keeperOn(more: Partial<KeeperParts> = {}) {
  const dataDir = await recordFolder();
  onTestFinished(() => rm(`${dataDir}-backups`, { recursive: true, force: true }));
  const clock = { now: new Date('2026-11-30T09:00:00'), lastWrite: Date.parse('2026-11-30T08:00:00') };
  const jobs = openJobs();
  const parts: KeeperParts = {
    dataDir,
    programVersion: '0.1.0',
    jobs,
    make: makeBackup,
    firstAct: () => '2026-11-01T10:00:00+01:00',
    lastWrite: () => clock.lastWrite,
    now: () => clock.now,
    ...more,
  };
  const keeper = openBackupKeeper(parts);
  const settle = async () => {
    while ((await keeper.status()).running !== null) await new Promise((resolve) => setTimeout(resolve, 5));
  };
  return { keeper, dataDir, clock, jobs, settle };
}

describe('the keeper of the back-ups', () => {
  it('warns while there is none, makes one by itself beside the data folder, and one more each day', async () => {
    const { keeper, dataDir, clock, settle } = await keeperOn();
    expect((await keeper.status()).warning?.code).toBe('none');
    await keeper.lookWhetherDue();
    await settle();
    await keeper.lookWhetherDue();
    await settle();
    const status = await keeper.status();
    expect(status).toMatchObject({
      folder: `${dataDir}-backups`,
      copies: 1,
      warning: null,
      last: { acts: 6, files: 5 },
    });
    clock.now = new Date(clock.now.getTime() + day);
    await keeper.lookWhetherDue();
    await settle();
    expect((await keeper.status()).copies).toBe(2);
    clock.now = new Date(clock.now.getTime() + 8 * day);
    expect((await keeper.status()).warning?.code).toBe('old');
  });

  it('makes another after work, when something was entered since', async () => {
    const { keeper, clock, settle } = await keeperOn();
    keeper.begin('itself');
    await settle();
    clock.lastWrite = clock.now.getTime() + 60_000;
    clock.now = new Date(clock.now.getTime() + 16 * 60_000);
    await keeper.lookWhetherDue();
    await settle();
    expect((await keeper.status()).copies).toBe(2);
  });

  it('makes none by itself where that is not wanted, or nothing is entered', async () => {
    const off = await keeperOn();
    await off.keeper.choose({ daily: false });
    await off.keeper.lookWhetherDue();
    expect((await off.keeper.status()).running).toBeNull();
    const empty = await keeperOn({ firstAct: () => undefined });
    await empty.keeper.lookWhetherDue();
    expect((await empty.keeper.status()).running).toBeNull();
  });

  it('joins the copy that is being made', async () => {
    const { keeper, settle } = await keeperOn();
    expect(keeper.begin('hand')).toBe(keeper.begin('hand'));
    await settle();
    expect((await keeper.status()).copies).toBe(1);
  });

  it('keeps a folder that was chosen, and says when its disk is not there', async () => {
    const { keeper, settle, jobs } = await keeperOn();
    const disk = join(await temporaryFolder(), 'disk');
    expect(await keeper.choose({ folder: 'not/whole' })).toMatchObject({
      faults: [{ code: 'backup.not-a-path' }],
    });
    await keeper.choose({ folder: disk });
    keeper.begin('hand');
    await settle();
    expect((await datedCopies(disk)).length).toBe(1);
    await rm(disk, { recursive: true });
    const job = keeper.begin('hand');
    await settle();
    expect(jobs.state(job)).toMatchObject({
      state: 'failed',
      message: expect.stringContaining('plugged in'),
    });
    expect((await keeper.status()).warning).toMatchObject({
      code: 'failed',
      words: expect.stringContaining(disk),
    });
    await keeper.choose({ folder: '' });
    expect((await keeper.status()).folder).toBe((await keeper.status()).usualFolder);
  });

  it('says what stood in the way, and a list that can’t be read is no back-up', async () => {
    const { keeper, settle, dataDir } = await keeperOn();
    keeper.begin('hand');
    await settle();
    const [copy] = await datedCopies(`${dataDir}-backups`);
    await writeFile(join(copy?.path ?? '', 'manifest.json'), '{}');
    expect(await keeper.status()).toMatchObject({ copies: 0, last: null, warning: { code: 'none' } });
    await rm(`${dataDir}-backups`, { recursive: true });
    await writeFile(`${dataDir}-backups`, 'a file in its place');
    keeper.begin('hand');
    await settle();
    expect((await keeper.status()).warning).toMatchObject({ code: 'failed' });
  });
});
