import type { Piece } from '../piece/piece.ts';

/** What a printed opinion is called as a file: the piece, the day, and which revision or that it is a draft. */
export function opinionFileName(
  piece: Pick<Piece, 'title' | 'id'>,
  day: string,
  which: string,
  as = 'pdf',
): string {
  const title = piece.title
    .replace(/[^\p{L}\p{N} -]+/gu, ' ')
    .replace(/\s+/gu, ' ')
    .trim();
  return `${title.slice(0, 80).trim() || piece.id}, ${day}, ${which}.${as}`;
}

const mediaTypes: Record<string, string> = {
  pdf: 'application/pdf',
  docx: 'application/vnd.openxmlformats-officedocument.wordprocessingml.document',
  html: 'text/html; charset=utf-8',
  csv: 'text/csv; charset=utf-8',
  zip: 'application/zip',
  json: 'application/json',
};

/** The headers of a PDF that is saved under a name. */
export function pdfHeaders(name: string): Record<string, string> {
  return fileHeaders(name);
}

/** The headers of a file that is saved under a name, by its ending; it is never shown in place of a page. */
export function fileHeaders(name: string): Record<string, string> {
  const plain = name.normalize('NFKD').replace(/[^\x20-\x7e]|["\\]/g, '');
  return {
    'content-type': mediaTypes[/\.(\w+)$/.exec(name)?.[1] ?? 'pdf'] ?? 'application/octet-stream',
    'content-disposition': `attachment; filename="${plain}"; filename*=UTF-8''${encodeURIComponent(name)}`,
    'cache-control': 'no-store',
  };
}
