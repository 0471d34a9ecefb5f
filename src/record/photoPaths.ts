import { join } from 'node:path';

/** The sizes a photo is shown in, by their longest side in pixels. */
export const shownSizes = { view: 2048, thumb: 320 } as const;
export type ShownSize = keyof typeof shownSizes;

/**
 * Where photos and what is made from them stand in a data folder.
 *
 * @param workDir  where what is made and what is arriving stands, where the data folder is only looked at
 */
export function photoPaths(dir: string, workDir = dir) {
  return {
    originals: join(dir, 'photos'),
    original: (sha256: string) => join(dir, 'photos', sha256.slice(0, 2), sha256),
    derived: join(workDir, 'derived'),
    shown: (sha256: string, size: ShownSize) => join(workDir, 'derived', `${sha256}-${size}.jpg`),
    facts: (sha256: string) => join(workDir, 'derived', `${sha256}.json`),
    incoming: join(workDir, 'incoming'),
  };
}

/** Whether a text is a SHA-256 as it stands in addresses and file names. */
export function isSha256(text: string): boolean {
  return /^[0-9a-f]{64}$/.test(text);
}
