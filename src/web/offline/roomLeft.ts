import { useEffect, useState } from 'react';

/** Room on this device for what is entered, in bytes; `isKept`: the browser has promised not to clear it by itself. */
export type Room = { freeBytes: number | undefined; isKept: boolean };

/** Below this, a visit of a dozen photos may no longer fit. */
const scarceBytes = 300e6;

/** The room left on this device, looked at anew whenever `turn` changes. */
export function useRoomLeft(turn: unknown): Room | undefined {
  const [room, setRoom] = useState<Room>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the turn says when to look again
  useEffect(() => {
    const stands = { left: false };
    void readRoom(navigator.storage).then((read) => stands.left || setRoom(read));
    return () => {
      stands.left = true;
    };
  }, [turn]);
  return room;
}

/** Asks the browser how much room there is, and whether it keeps what is here. */
export async function readRoom(storage: StorageManager | undefined): Promise<Room> {
  const estimate = await storage?.estimate?.().catch(() => undefined);
  const isKept = (await storage?.persisted?.().catch(() => false)) ?? false;
  const { quota, usage } = estimate ?? {};
  return {
    freeBytes: quota === undefined || usage === undefined ? undefined : Math.max(0, quota - usage),
    isKept,
  };
}

/** Asks the browser to keep what is here even where room gets scarce; some ask the person. */
export async function askToKeep(storage: StorageManager | undefined): Promise<boolean> {
  return (await storage?.persist?.().catch(() => false)) ?? false;
}

/** The room in words. */
export function roomWords({ freeBytes }: Room): string {
  if (freeBytes === undefined) return 'This browser does not say how much room is left.';
  const left = `Room left on this device: about ${bytesWords(freeBytes)}.`;
  return freeBytes < scarceBytes
    ? `${left} That is little for a visit with photos: hand over what waits, or free some room first.`
    : left;
}

/** Bytes as they are spoken of: `640 kB`, `48 MB`, `3.2 GB`. */
export function bytesWords(bytes: number): string {
  if (bytes < 1e6) return `${Math.max(1, Math.round(bytes / 1e3))} kB`;
  if (bytes < 1e9) return `${Math.round(bytes / 1e6)} MB`;
  return `${(bytes / 1e9).toFixed(1)} GB`;
}
