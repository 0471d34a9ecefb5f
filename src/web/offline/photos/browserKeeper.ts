import { withDatabase } from './deviceDatabase.ts';
import { deviceFiles } from './deviceFiles.ts';
import { openPhotoKeeper, type PhotoKeeper } from './photoKeeper.ts';
import { putPhoto } from './putPhoto.ts';

/** The keeper of this browser's photos. */
export function openBrowserKeeper(): PhotoKeeper {
  return openPhotoKeeper({
    files: deviceFiles(),
    register: {
      all: () => withDatabase((database) => database.getAll('held')),
      get: (sha256) => withDatabase((database) => database.get('held', sha256)),
      put: (photo) => withDatabase(async (database) => void (await database.put('held', photo))),
      drop: (sha256) => withDatabase((database) => database.delete('held', sha256)),
    },
    send: putPhoto,
    // Fetched with the app and kept on the device, but only run where a photo is taken without the record.
    open: async (sha256, bytes) => (await import('./pictureOnDevice.ts')).pictureOnDevice(sha256, bytes),
    nowMs: () => Date.now(),
  });
}
