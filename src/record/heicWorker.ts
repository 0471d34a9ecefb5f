import { parentPort, workerData } from 'node:worker_threads';
import decode from 'heic-decode';

/** Decodes one HEIC file in a thread of its own, so that a long or broken one never holds up the record. */
const { bytes, mostPixels } = workerData as { bytes: Uint8Array; mostPixels: number };
try {
  const images = await decode.all({ buffer: bytes });
  const [image] = images;
  if (image === undefined) parentPort?.postMessage({ fault: 'empty' });
  else if (image.width * image.height > mostPixels) parentPort?.postMessage({ fault: 'too-many-pixels' });
  else {
    const { width, height, data } = await image.decode();
    const pixels = new Uint8Array(data.buffer, data.byteOffset, data.byteLength).slice();
    parentPort?.postMessage({ width, height, pixels }, [pixels.buffer]);
  }
} catch {
  parentPort?.postMessage({ fault: 'broken' });
}
