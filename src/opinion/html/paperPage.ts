import { dayWords } from '../../units/days.ts';
import type { OpinionDocument } from '../opinionDocument.ts';
import type { MarkedPlates } from '../pdf/markedPlate.ts';
import { documentHtml } from './documentHtml.ts';
import { escapeHtml } from './escapeHtml.ts';
import { pageStyle } from './pageStyle.ts';

/**
 * A paper as one page of HTML that stands alone: its pictures in it, no script, nothing fetched from anywhere; every text escaped.
 *
 * @param plates  pictures by their SHA-256, with their marks drawn in
 */
export function paperPage(document: OpinionDocument, plates: MarkedPlates): string {
  const { title, above, line, author, draft, madeOn, example } = document;
  const pictureOf = (sha256: string) => {
    const plate = plates.get(sha256);
    return plate === undefined ? undefined : `data:image/jpeg;base64,${plate.jpeg.toString('base64')}`;
  };
  const foot = [
    author,
    dayWords(madeOn),
    draft ? 'not signed' : (document.issued ?? ''),
    example ? 'an invented example' : '',
  ]
    .filter((each) => each !== '')
    .join(' · ');
  return `<!doctype html>
<html lang="en-US">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">
<title>${escapeHtml(title)}</title>
<style>${pageStyle}</style>
</head>
<body>
<header>
<p class="note">${escapeHtml(above)}</p>
<h1>${escapeHtml(title)}</h1>
${line === '' ? '' : `<p class="lead">${escapeHtml(line)}</p>`}
</header>
<main>
${documentHtml(document, pictureOf)}
</main>
<footer><p class="note">${escapeHtml(foot)}</p></footer>
</body>
</html>
`;
}
