import { useEffect, useRef, useState } from 'react';
import type { Piece } from '../../../piece/piece.ts';
import type { Recorder } from '../recorder.ts';
import { addPhoto, type Belongs, photoIdOf } from './photoActs.ts';
import { type KeptPhoto, sendPhoto } from './sendPhoto.ts';

/** A photo on its way to the record. */
export type Upload = {
  id: string;
  name: string;
  state: 'waiting' | 'going' | 'failed' | 'kept';
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

type Job = { id: string; file: File; belongs: Belongs };

/**
 * Hands photos to the record one after another, each with its progress, and enters each in the piece once its bytes are
 * kept. One that fails says why and waits to be tried again; the others go on.
 *
 * @param hand  hands over one photo; the page's own way unless a test brings another
 */
export function usePhotoUploads(
  piece: Piece,
  record: Recorder,
  hand: typeof sendPhoto = sendPhoto,
): PhotoUploads {
  const [list, setList] = useState<readonly Upload[]>([]);
  const latest = useRef({
    piece,
    record,
    hand,
    jobs: [] as Job[],
    failed: new Map<string, Job>(),
    added: [] as string[],
    busy: false,
  });
  Object.assign(latest.current, { piece, record, hand });
  const busy = list.some((each) => each.state === 'going' || each.state === 'waiting');
  useEffect(() => {
    if (!busy) return;
    const hold = (event: BeforeUnloadEvent) => event.preventDefault();
    window.addEventListener('beforeunload', hold);
    return () => window.removeEventListener('beforeunload', hold);
  }, [busy]);

  const change = (id: string, to: Partial<Upload>) =>
    setList((now) => now.map((each) => (each.id === id ? { ...each, ...to } : each)));
  const enter = (job: Job, kept: KeptPhoto) => {
    const { piece: now, added } = latest.current;
    const order = [...now.plateOrder, ...added.filter((each) => !now.plateOrder.includes(each))];
    latest.current.record(addPhoto({ ...now, plateOrder: order }, kept, job.file.name, job.belongs));
    added.push(photoIdOf(kept.sha256));
    change(job.id, { state: 'kept', share: 1, words: kept.note ?? '' });
  };
  const run = async () => {
    if (latest.current.busy) return;
    latest.current.busy = true;
    for (let job = latest.current.jobs.shift(); job !== undefined; job = latest.current.jobs.shift()) {
      const { id, file } = job;
      change(id, { state: 'going', share: 0, words: '' });
      try {
        enter(job, await latest.current.hand(file, (share) => change(id, { share })));
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
    const jobs = [...files].map((file) => ({ id: crypto.randomUUID(), file, belongs }));
    setList((now) => [
      ...now,
      ...jobs.map(({ id, file }): Upload => ({ id, name: file.name, state: 'waiting', share: 0, words: '' })),
    ]);
    latest.current.jobs.push(...jobs);
    void run();
  };
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
