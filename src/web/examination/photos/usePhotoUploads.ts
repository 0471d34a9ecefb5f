import { useEffect, useRef, useState } from 'react';
import type { Piece } from '../../../piece/piece.ts';
import type { Belongs } from '../../offline/photos/heldPhoto.ts';
import { usePhotoKeeper } from '../../offline/photos/PhotoKeeperProvider.tsx';
import type { TakenIn } from '../../offline/photos/photoKeeper.ts';
import { askToKeep } from '../../offline/roomLeft.ts';
import type { Recorder } from '../recorder.ts';
import { addPhoto, photoIdOf } from './photoActs.ts';
import { jobOf, type PhotoJob, takePhoto } from './takePhoto.ts';

/** A photo on its way to the record. */
export type Upload = {
  id: string;
  name: string;
  /** `held`: entered, and its bytes wait on this device. */
  state: 'waiting' | 'going' | 'failed' | 'kept' | 'held';
  share: number;
  /** What went wrong, or what is not known of the photo, in one sentence. */
  words: string;
};

export type PhotoUploads = {
  list: readonly Upload[];
  add: (files: Iterable<File>, belongs: Belongs) => void;
  again: (id: string) => void;
  /** Empties the list once nothing is on its way. */
  clear: () => void;
};

type Job = PhotoJob & { id: string };

/**
 * Hands photos to the record one after another, each with its progress, and enters each in the piece once its bytes are
 * kept: in the record, or on this device while the record does not answer. One that fails says why and waits to be tried
 * again; the others go on. Those that an earlier page was left before it could enter are entered first.
 *
 * @param isAway  the record is known not to answer
 */
export function usePhotoUploads(
  piece: Piece,
  record: Recorder,
  { isAway, readOnly }: { isAway: boolean; readOnly: boolean },
): PhotoUploads {
  const keeper = usePhotoKeeper();
  const [list, setList] = useState<readonly Upload[]>([]);
  const latest = useRef({
    piece,
    record,
    isAway,
    jobs: [] as Job[],
    failed: new Map<string, Job>(),
    added: [] as string[],
    busy: false,
  });
  Object.assign(latest.current, { piece, record, isAway });
  const busy = list.some((each) => each.state === 'going' || each.state === 'waiting');
  useEffect(() => {
    if (!busy) return;
    const hold = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', hold);
    return () => window.removeEventListener('beforeunload', hold);
  }, [busy]);

  const change = (id: string, to: Partial<Upload>) =>
    setList((now) => now.map((each) => (each.id === id ? { ...each, ...to } : each)));
  const enter = (job: Job, { facts, held }: TakenIn) => {
    const { piece: now, added } = latest.current;
    const order = [...now.plateOrder, ...added.filter((each) => !now.plateOrder.includes(each))];
    latest.current.record(addPhoto({ ...now, plateOrder: order }, facts, job.file.name, job.belongs));
    added.push(photoIdOf(facts.sha256));
    if (held) void keeper.wasEntered(facts.sha256);
    if (held) void askToKeep(navigator.storage);
    change(job.id, { state: held ? 'held' : 'kept', share: 1, words: facts.note ?? '' });
  };
  const run = async () => {
    if (latest.current.busy) return;
    latest.current.busy = true;
    for (let job = latest.current.jobs.shift(); job !== undefined; job = latest.current.jobs.shift()) {
      const { id } = job;
      change(id, { state: 'going', share: 0, words: '' });
      try {
        const tell = (share: number) => change(id, { share });
        enter(job, await takePhoto(job, keeper, latest.current.isAway, tell));
      } catch (slip) {
        latest.current.failed.set(id, job);
        change(id, {
          state: 'failed',
          words: slip instanceof Error ? slip.message : 'The photo was not taken. Try again.',
        });
      }
    }
    latest.current.busy = false;
  };
  const add = (files: Iterable<File>, belongs: Belongs) => {
    begin([...files].map((file) => ({ file, piece: latest.current.piece.id, belongs })));
  };
  const begin = (photos: readonly PhotoJob[]) => {
    const jobs = photos.map((photo) => ({ ...photo, id: crypto.randomUUID() }));
    setList((now) => [
      ...now,
      ...jobs.map(({ id, file }): Upload => ({ id, name: file.name, state: 'waiting', share: 0, words: '' })),
    ]);
    latest.current.jobs.push(...jobs);
    void run();
  };
  const beginLatest = useRef(begin);
  beginLatest.current = begin;
  useEffect(() => {
    if (readOnly) return;
    const stands = { left: false };
    void keeper
      .notEntered(piece.id)
      .then((photos) => Promise.all(photos.map((photo) => jobOf(photo, keeper))))
      .then((jobs) => {
        const found = jobs.filter((job) => job !== undefined);
        if (!stands.left && found.length > 0) beginLatest.current(found);
      });
    return () => {
      stands.left = true;
    };
  }, [piece.id, readOnly, keeper]);
  const again = (id: string) => {
    const job = latest.current.failed.get(id);
    if (job === undefined) return;
    latest.current.failed.delete(id);
    change(id, { state: 'waiting', words: '' });
    latest.current.jobs.push(job);
    void run();
  };
  const clear = () =>
    setList((now) => now.filter((each) => each.state === 'going' || each.state === 'waiting'));
  return { list, add, again, clear };
}
