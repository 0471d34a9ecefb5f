import { openPromise } from 'yauzl';

/** The files of a zip as bytes, by their paths in it. */
export async function unzip(file: string): Promise<Map<string, Buffer>> {
  const zip = await openPromise(file);
  const found = new Map<string, Buffer>();
  for await (const entry of zip.eachEntry()) {
    const chunks: Buffer[] = [];
    for await (const chunk of await zip.openReadStreamPromise(entry)) chunks.push(chunk as Buffer);
    found.set(entry.fileName, Buffer.concat(chunks));
  }
  return found;
}
