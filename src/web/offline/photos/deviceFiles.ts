import { withDatabase } from './deviceDatabase.ts';

/** Files kept on this device, by name. The page and the worker of the app read and write the same ones. */
export type DeviceFiles = {
  /** Answers once the whole file is kept. @throws where there is no room, or the browser keeps nothing */
  write(name: string, bytes: Blob): Promise<void>;
  read(name: string): Promise<Blob | undefined>;
  drop(name: string): Promise<void>;
};

const folderName = 'photos';

/**
 * The device's files: in the private file system of this address; in its database where the browser has no such file
 * system or can't write to it (some private windows, older Safari).
 */
export function deviceFiles(storage: StorageManager | undefined = navigator.storage): DeviceFiles {
  const folder = async () => {
    if (typeof storage?.getDirectory !== 'function') return undefined;
    return storage
      .getDirectory()
      .then((top) => top.getDirectoryHandle(folderName, { create: true }))
      .catch(() => undefined);
  };
  const inFolder = async (name: string): Promise<Blob | undefined> => {
    const found = await (await folder())?.getFileHandle(name).catch(() => undefined);
    const file = await found?.getFile().catch(() => undefined);
    // A name without bytes is what an interrupted writing leaves.
    return file === undefined || file.size === 0 ? undefined : file;
  };
  return {
    async write(name, bytes) {
      if (await writeInFolder(await folder(), name, bytes)) return;
      const value = { bytes: await bytes.arrayBuffer(), type: bytes.type };
      await withDatabase((database) => database.put('files', value, name));
    },
    async read(name) {
      const file = await inFolder(name);
      if (file !== undefined) return file;
      const kept = await withDatabase((database) => database.get('files', name));
      return kept === undefined ? undefined : new Blob([kept.bytes], { type: kept.type });
    },
    async drop(name) {
      await (await folder())?.removeEntry(name).catch(() => undefined);
      await withDatabase((database) => database.delete('files', name));
    },
  };
}

/** Whether the file is whole in the folder now; the bytes count only once the writing is closed. */
async function writeInFolder(
  folder: FileSystemDirectoryHandle | undefined,
  name: string,
  bytes: Blob,
): Promise<boolean> {
  try {
    const handle = await folder?.getFileHandle(name, { create: true });
    if (typeof handle?.createWritable !== 'function') return false;
    const writing = await handle.createWritable();
    await writing.write(bytes);
    await writing.close();
    return (await handle.getFile()).size === bytes.size;
  } catch {
    return false;
  }
}
