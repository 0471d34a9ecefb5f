import type { Piece } from '../piece/piece.ts';

/** What a printed opinion is called as a file: the piece, the day, and which revision or that it is a draft. */
export function opinionFileName(piece: Pick<Piece, 'title' | 'id'>, day: string, which: string): string {
  const title = piece.title
    .replace(/[^\p{L}\p{N} -]+/gu, ' ')
    .replace(/\s+/gu, ' ')
    .trim();
  return `${title.slice(0, 80).trim() || piece.id}, ${day}, ${which}.pdf`;
}

/** The headers of a PDF that is saved under a name. */
export function pdfHeaders(name: string): Record<string, string> {
  const plain = name.normalize('NFKD').replace(/[^\x20-\x7e]|["\\]/g, '');
  return {
    'content-type': 'application/pdf',
    'content-disposition': `attachment; filename="${plain}"; filename*=UTF-8''${encodeURIComponent(name)}`,
    'cache-control': 'no-store',
  };
}
