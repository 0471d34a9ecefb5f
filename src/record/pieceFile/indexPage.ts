import { capital, counted } from '../../ground/words.ts';
import { documentHtml, type PictureOf } from '../../opinion/html/documentHtml.ts';
import { escapeHtml } from '../../opinion/html/escapeHtml.ts';
import { pageStyle } from '../../opinion/html/pageStyle.ts';
import type { OpinionDocument } from '../../opinion/opinionDocument.ts';
import type { RecordedEvent } from '../../piece/event.ts';
import type { Photo } from '../../piece/photo.ts';
import type { PieceFileManifest } from './pieceFileManifest.ts';

/** What the page is made of. */
export type IndexPageInput = {
  document: OpinionDocument;
  photos: readonly Photo[];
  events: readonly RecordedEvent[];
  about: Omit<PieceFileManifest, 'files'>;
  pictureOf: PictureOf;
  /** The original of a photo, beside the page; undefined where it was not there. */
  originalOf: PictureOf;
};

/**
 * The page that shows a piece in any browser without this program: one file of HTML, no script, nothing fetched from
 * anywhere, pictures beside it. What people entered is escaped everywhere.
 */
export function indexPage(input: IndexPageInput): string {
  const { document, about } = input;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src 'self' file: data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'">
<title>${escapeHtml(document.title)}</title>
<style>${pageStyle}</style>
</head>
<body>
<header>
<h1>${escapeHtml(document.title)}</h1>
<p class="lead">${escapeHtml(document.line)}</p>
<p class="note">A copy of one piece from a record kept with Underside, made on ${escapeHtml(about.madeAt.slice(0, 10))}: ${counted(about.acts, 'act')}. ${document.example ? 'An invented example. ' : ''}This page is for reading and is no signed opinion; a signed one, where there is one, is in the folder “issued”. The whole piece can be brought into another record with <code>npx underside piece in</code> and this file.</p>
</header>
${documentHtml(document, input.pictureOf)}
${photosHtml(input)}
${historyHtml(input.events)}
</body>
</html>
`;
}

function photosHtml({ photos, originalOf, about }: IndexPageInput): string {
  if (photos.length === 0) return '';
  const rows = photos.map((photo) => {
    const at = originalOf(photo.sha256);
    const name = photo.name.trim() || photo.id;
    const file =
      at === undefined
        ? `${escapeHtml(name)} (not there when this was made)`
        : `<a href="${escapeHtml(at)}">${escapeHtml(name)}</a>`;
    return `<tr><td>${file}</td><td>${escapeHtml(photo.caption)}</td><td>${escapeHtml(photo.takenAt ?? '')}</td><td><code>${photo.sha256}</code></td></tr>`;
  });
  const lacking =
    about.missing.length === 0
      ? ''
      : `<p class="notice">${about.missing.length} of the photos could not be found.</p>`;
  return `<section id="photos"><h2>Photographs as they were taken</h2>${lacking}<div class="wide"><table><thead><tr><th scope="col">File</th><th scope="col">Caption</th><th scope="col">Taken</th><th scope="col">SHA-256</th></tr></thead><tbody>${rows.join('')}</tbody></table></div></section>`;
}

function historyHtml(events: readonly RecordedEvent[]): string {
  const rows = events.map(
    (event) =>
      `<tr><td>${escapeHtml(event.at.slice(0, 16).replace('T', ' '))}</td><td>${escapeHtml(event.who)}</td><td>${escapeHtml(event.device)}</td><td>${escapeHtml(kindWords(event))}</td><td><code>${event.hash.slice(0, 12)}</code></td></tr>`,
  );
  return `<section id="history"><h2>History</h2><p class="note">Every act, oldest first, with the beginning of its hash. The acts themselves, with what stood before each, are in acts.jsonl.</p><div class="wide"><table><thead><tr><th scope="col">When</th><th scope="col">Who</th><th scope="col">Device</th><th scope="col">What</th><th scope="col">Hash</th></tr></thead><tbody>${rows.join('')}</tbody></table></div></section>`;
}

/** `finding-recorded` of `saw-marks@splat` as “Finding recorded: saw-marks@splat”. */
function kindWords({ kind, changes }: RecordedEvent): string {
  const words = kind.replaceAll('-', ' ');
  const places = new Set(changes.map(({ path }) => path[1]).filter((each) => each !== undefined));
  const what = [...places].slice(0, 3).join(', ');
  return `${capital(words)}${what === '' ? '' : `: ${what}`}`;
}
