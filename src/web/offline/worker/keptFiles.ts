/** A file of the screens: its address, and the SHA-256 of its bytes. */
export type FileToKeep = readonly [path: string, sha256: string];

/** What a build keeps on the device: with its installation, and after all else. */
export type KeptFiles = { build: string; now: readonly FileToKeep[]; later: readonly FileToKeep[] };

const screensOf = (build: string) => `underside-screens-${build}`;

/**
 * Lays the screens of a build on the device. Every file is held to the bytes it was built with, so that a server that is
 * changed in between never leaves a mixture: then nothing of it counts, and the browser tries again later.
 *
 * @throws Error where a file does not come, or comes as another one
 */
export async function layIn(files: readonly FileToKeep[], build: string): Promise<void> {
  const cache = await caches.open(screensOf(build));
  await Promise.all(
    files.map(async (file) => {
      const [path] = file;
      if (await cache.match(path)) return;
      const had = (await caches.match(path))?.clone();
      const kept = (await wholeOrNone(file, had)) ?? (await wholeOrNone(file, await fetch(path)));
      if (kept === undefined) throw new Error(`${path} did not come as it was built.`);
      await cache.put(path, kept);
    }),
  );
}

/** Lets go of builds that no page can still be open on: all but this one and the one before it. */
export async function letGoOfOlder(build: string): Promise<void> {
  const all = (await caches.keys()).filter((name) => name.startsWith(screensOf('')));
  const older = all.filter((name) => name !== screensOf(build));
  await Promise.all(older.slice(0, -1).map((name) => caches.delete(name)));
}

/**
 * A file of the screens from the device. A page of the build before finds its own files too: their names hold a hash of
 * their bytes, so that none is ever taken for another.
 */
export async function fromDevice(path: string, build: string): Promise<Response | undefined> {
  const cache = await caches.open(screensOf(build));
  return (await cache.match(path)) ?? (path.startsWith('/assets/') ? caches.match(path) : undefined);
}

async function wholeOrNone(
  [, sha256]: FileToKeep,
  answer: Response | undefined,
): Promise<Response | undefined> {
  if (!answer?.ok) return undefined;
  const digest = await crypto.subtle.digest('SHA-256', await answer.clone().arrayBuffer());
  const hex = Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
  return hex === sha256 ? answer : undefined;
}
