import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { photoPaths } from '../../src/record/photoPaths.ts';
import { sqliteLog } from '../../src/record/sqliteLog.ts';
import { createStore } from '../../src/record/store.ts';
import { act, finding, opening, step } from './drafts.ts';
import { sha256 } from './pictures.ts';
import { temporaryFolder } from './temporaryFolder.ts';

/** A photo as a piece names it. */
export function photoOf(id: string, bytes: Uint8Array) {
  return {
    id,
    sha256: sha256(bytes),
    mediaType: 'image/jpeg',
    name: `${id}.jpg`,
    bytes: bytes.length,
    widthPx: 1,
    heightPx: 1,
  };
}

/** A data folder with acts of two devices, an undo, two photos, an entry of one's own and an issued revision. */
export async function recordFolder(): Promise<string> {
  const dir = await temporaryFolder();
  const log = sqliteLog(join(dir, 'record.db'));
  const store = createStore(log);
  const photos = ['the first photo', 'the second photo'].map((text) => Buffer.from(text));
  store.append([
    opening('one'),
    finding('one', 'a', 'splat'),
    finding('one', 'b', 'splat', { device: 'laptop' }),
  ]);
  for (const [index, bytes] of photos.entries()) {
    await put(photoPaths(dir).original(sha256(bytes)), bytes);
    const photo = photoOf(`p${index + 1}`, bytes);
    store.append([act('one', 'photo-added', [{ path: ['photos', photo.id], to: photo }])]);
  }
  store.undo('one', step());
  log.close();
  await put(join(dir, 'own-knowledge', 'own.yaml'), 'signs: []\nshops: []\n');
  await put(join(dir, 'issued', 'one', '1', 'opinion.pdf'), '%PDF-1.7 an issued opinion');
  await put(join(dir, 'settings.json'), '{"dailyBackup":true}\n');
  await put(join(dir, 'derived', 'made-again.json'), '{}');
  return dir;
}

/** Writes a file, with the folders it stands in. */
export async function put(path: string, content: string | Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, content);
}
