import type { HandedOver, PhotosToHand } from '../../record/deskState.ts';
import type { Asked } from '../../record/pieceServer.ts';
import type { DeviceFiles } from './deviceFiles.ts';
import type { HeldPhoto, PhotoFacts } from './heldPhoto.ts';
import type { PictureHere } from './pictureOnDevice.ts';

/** What the record answers of a photo it has taken. */
export type TakenPhoto = PhotoFacts & { note?: string | undefined };

/** What keeping photos leans on; tests hand in their own. */
export type KeeperEdges = {
  files: DeviceFiles;
  /** The list of photos whose bytes are here. */
  register: {
    all(): Promise<HeldPhoto[]>;
    get(sha256: string): Promise<HeldPhoto | undefined>;
    put(photo: HeldPhoto): Promise<void>;
    drop(sha256: string): Promise<void>;
  };
  send(
    photo: Pick<HeldPhoto, 'sha256' | 'name' | 'type'>,
    bytes: Blob,
    tell: (share: number) => void,
  ): Promise<Asked<TakenPhoto>>;
  open(sha256: string, bytes: Blob): Promise<PictureHere | undefined>;
  nowMs(): number;
};

/** What came of taking a photo: in the record, or held here until the record answers. */
export type TakenIn = { facts: TakenPhoto; held: boolean };

/** Photos that wait here, and the share of the one that is going over. */
export type WaitingPhotos = {
  waiting: readonly HeldPhoto[];
  going: { sha256: string; share: number } | undefined;
};

/** Keeps photos on this device until the record has them. */
export type PhotoKeeper = ReturnType<typeof openPhotoKeeper>;

/** Opens the keeper over the device's files. */
export function openPhotoKeeper(edges: KeeperEdges) {
  const shown = { now: { waiting: [], going: undefined } as WaitingPhotos };
  const listeners = new Set<() => void>();
  const show = (change: Partial<WaitingPhotos>): void => {
    shown.now = { ...shown.now, ...change };
    for (const listener of listeners) listener();
  };
  const look = async (): Promise<void> => {
    const all = await edges.register.all().catch(() => []);
    show({ waiting: all.filter(({ stands }) => stands === 'waits').sort((a, b) => a.atMs - b.atMs) });
  };
  void look();

  const handed = async (photo: HeldPhoto): Promise<void> => {
    // What went straight over needs no second copy; what was taken without the record stays, to be looked at closely here.
    if (photo.facts === undefined) {
      await edges.files.drop(`${photo.sha256}.original`);
      await edges.register.drop(photo.sha256);
    } else await edges.register.put({ ...photo, stands: 'handed', words: '' });
  };

  const handOver = async (sha256: string, again = false): Promise<HandedOver> => {
    const photo = await edges.register.get(sha256).catch(() => undefined);
    if (photo === undefined) return { came: 'not-here' };
    if (photo.stands === 'handed' && !again) return { came: 'handed' };
    const bytes = await edges.files.read(`${sha256}.original`).catch(() => undefined);
    if (bytes === undefined) return { came: 'not-here' };
    show({ going: { sha256, share: 0 } });
    const asked = await edges.send(photo, bytes, (share) => show({ going: { sha256, share } }));
    show({ going: undefined });
    if (asked.came === 'nothing') return { came: 'nothing' };
    if (asked.came === 'answer') await handed(photo);
    else await edges.register.put({ ...photo, stands: 'refused', words: asked.message });
    await look();
    return asked.came === 'answer'
      ? { came: 'handed' }
      : { came: 'refusal', message: `The photo “${photo.name}” was not taken: ${asked.message}` };
  };

  /** Keeps the bytes here first, so that nothing is lost if the page goes while they are on their way. */
  const takeIn = async (
    photo: Pick<HeldPhoto, 'sha256' | 'name' | 'type' | 'piece' | 'belongs'>,
    bytes: Blob,
    { isAway, tell }: { isAway: boolean; tell: (share: number) => void },
  ): Promise<TakenIn> => {
    const { sha256 } = photo;
    const held: HeldPhoto = {
      ...photo,
      bytes: bytes.size,
      atMs: edges.nowMs(),
      entered: false,
      stands: 'waits',
      words: '',
    };
    const isKept = await edges.files
      .write(`${sha256}.original`, bytes)
      .then(() => edges.register.put(held))
      .then(() => true)
      .catch(() => false);
    // Where the record is known to be away nothing is tried: a network that carries nothing lets one wait for long.
    const asked = isAway ? ({ came: 'nothing' } as const) : await edges.send(photo, bytes, tell);
    if (asked.came !== 'nothing') {
      await edges.register.drop(sha256).catch(() => undefined);
      await edges.files.drop(`${sha256}.original`).catch(() => undefined);
      if (asked.came === 'refusal') throw new Error(asked.message);
      return { facts: asked.answer, held: false };
    }
    if (!isKept)
      throw new Error(
        'The record could not be reached, and this device has no room to keep the photo. Free some room, or come back to the record, and try again.',
      );
    const picture = await edges.open(sha256, bytes).catch(() => undefined);
    if (picture === undefined)
      throw new Error(
        'The record could not be reached, and this browser can’t open this kind of picture without it. The photo is kept on this device: try again once the record answers.',
      );
    await edges.files.write(`${sha256}.view`, picture.view);
    await edges.files.write(`${sha256}.thumb`, picture.thumb);
    await edges.register.put({ ...held, facts: picture.facts });
    await look();
    return { facts: picture.facts, held: true };
  };

  return {
    takeIn,
    handOver: handOver satisfies PhotosToHand['handOver'],
    /** The piece has the photo now: it is not entered a second time when the page comes back. */
    async wasEntered(sha256: string): Promise<void> {
      const photo = await edges.register.get(sha256).catch(() => undefined);
      if (photo !== undefined) await edges.register.put({ ...photo, entered: true }).catch(() => undefined);
    },
    /** Photos of a piece whose bytes are here and which the page was left before it could enter. */
    async notEntered(piece: string): Promise<HeldPhoto[]> {
      const all = await edges.register.all().catch(() => []);
      return all.filter((one) => one.piece === piece && !one.entered && one.stands === 'waits');
    },
    /** The bytes of a photo kept here. */
    bytesOf: (sha256: string) => edges.files.read(`${sha256}.original`).catch(() => undefined),
    /** What waits; the same object until something changes. */
    waiting: (): WaitingPhotos => shown.now,
    watch(listener: () => void): () => void {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    /** Another tab or an act may have handed some over. */
    look,
  };
}
