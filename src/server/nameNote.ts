import type { MediaType } from '../photo/file/sniffMediaType.ts';

const endings: Record<MediaType, { words: string; endings: string[] }> = {
  'image/jpeg': { words: 'a JPEG', endings: ['jpg', 'jpeg', 'jpe', 'jfif'] },
  'image/png': { words: 'a PNG', endings: ['png'] },
  'image/webp': { words: 'a WebP', endings: ['webp'] },
  'image/tiff': { words: 'a TIFF', endings: ['tif', 'tiff'] },
  'image/heic': { words: 'a HEIC', endings: ['heic', 'heif', 'hif'] },
};

/** Says so where a file's name promises another kind of picture than its bytes are; '' where there is nothing to say. */
export function nameNote(encodedName: string | undefined, mediaType: MediaType): string {
  const ending = /\.([a-z0-9]{1,8})$/i.exec(decodeName(encodedName))?.[1]?.toLowerCase();
  const { words, endings: own } = endings[mediaType];
  return ending === undefined || own.includes(ending)
    ? ''
    : `The file is called .${ending} and is ${words}; it was taken in as that.`;
}

function decodeName(encoded: string | undefined): string {
  try {
    return decodeURIComponent(encoded ?? '');
  } catch {
    return '';
  }
}
