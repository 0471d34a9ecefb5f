import ExifReader from 'exifreader';

/** What the camera wrote into a photo, and in words what it did not. */
export type CameraNote = { takenAt?: string; camera?: string; note: string };

/**
 * Time and camera from a photo's EXIF.
 *
 * @param exif  the whole file, or the EXIF block alone (with or without its "Exif" heading), or nothing
 * @returns takenAt without a zone, as the camera wrote it: `2026-04-02T10:15:00`
 * @source  Exif 2.32 (JEITA CP-3451X), tags DateTimeOriginal, OffsetTimeOriginal, Make, Model
 */
export function readCameraNote(exif: Uint8Array | undefined): CameraNote {
  const tags = exif === undefined ? undefined : readTags(exif);
  const camera = [text(tags?.Make), text(tags?.Model)].filter((one) => one !== '').join(' ');
  const takenAt = asTime(text(tags?.DateTimeOriginal));
  const offset = text(tags?.OffsetTimeOriginal);
  return {
    ...(takenAt && { takenAt }),
    ...(camera && { camera: camera.slice(0, 200) }),
    note: timeNote(takenAt, offset),
  };
}

function timeNote(takenAt: string | undefined, offset: string): string {
  if (takenAt === undefined) return 'The camera wrote no time.';
  if (/^[+-]\d\d:\d\d$/.test(offset)) return `The camera wrote its time zone: ${offset} from UTC.`;
  return 'The camera wrote no time zone: the time is that of its own clock.';
}

type Tags = Record<string, { description?: unknown } | undefined>;

function readTags(exif: Uint8Array): Tags | undefined {
  try {
    const headed = String.fromCharCode(...exif.subarray(0, 6)) === 'Exif\0\0';
    const block = Uint8Array.from(headed ? exif.subarray(6) : exif);
    return (ExifReader.load(block.buffer, { expanded: true }).exif ?? undefined) as Tags | undefined;
  } catch {
    return undefined;
  }
}

/** A tag as printable text: no control characters, none of the padding that cameras leave. */
function text(tag: { description?: unknown } | undefined): string {
  return typeof tag?.description === 'string' ? tag.description.replaceAll(/\p{C}/gu, '').trim() : '';
}

function asTime(written: string): string | undefined {
  const found = /^(\d{4})[:-](\d\d)[:-](\d\d)[ T](\d\d):(\d\d):(\d\d)/.exec(written);
  if (found === null) return undefined;
  const [, year, month, day, hour, minute, second] = found;
  const isReal =
    Number(month) >= 1 && Number(month) <= 12 && Number(day) >= 1 && Number(day) <= 31 && Number(hour) < 24;
  return isReal && Number(minute) < 60 && Number(second) < 61
    ? `${year}-${month}-${day}T${hour}:${minute}:${second}`
    : undefined;
}
