import { capital, counted } from '../../ground/words.ts';
import type { OpinionDocument } from '../../opinion/opinionDocument.ts';
import type { RecordedEvent } from '../../piece/event.ts';
import type { Photo } from '../../piece/photo.ts';
import { documentHtml, type PictureOf } from './documentHtml.ts';
import { escapeHtml } from './escapeHtml.ts';
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
<style>${style}</style>
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

const style = `
:root { color-scheme: light; }
body { font: 1rem/1.5 Georgia, "Times New Roman", serif; color: #2b2620; background: #fdfbf7; max-width: 60rem; margin: 0 auto; padding: 1.25rem clamp(0.9rem, 4vw, 2.5rem) 4rem; overflow-wrap: anywhere; }
h1 { font-size: 1.9rem; line-height: 1.2; margin: 0.5rem 0 0.25rem; }
h2 { font-size: 1.35rem; margin: 2.25rem 0 0.5rem; border-bottom: 1px solid #cdbfa9; padding-bottom: 0.2rem; }
h3 { font-size: 1.08rem; margin: 1.25rem 0 0.25rem; }
p, li, dd { max-width: 44rem; }
.lead { font-size: 1.12rem; }
.note, small { color: #5f564a; font-size: 0.9rem; }
.own { border-left: 3px solid #cdbfa9; padding-left: 0.8rem; white-space: pre-wrap; }
.notice { border-left: 4px solid #a2562a; background: #f8ece1; padding: 0.5rem 0.8rem; max-width: 44rem; }
dl { display: grid; grid-template-columns: minmax(7rem, 13rem) 1fr; gap: 0.25rem 1rem; }
dt { color: #5f564a; grid-column: 1; }
dd { margin: 0; grid-column: 2; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: 0.92rem; }
caption { text-align: left; color: #5f564a; padding: 0.3rem 0; }
th, td { text-align: left; vertical-align: top; padding: 0.3rem 0.6rem 0.3rem 0; border-bottom: 1px solid #e5dccd; min-width: 4.5rem; }
figure { margin: 1rem 0; }
figure img { max-width: 100%; height: auto; display: block; background: #fff; }
.swatch { height: 1em; }
code { font-size: 0.85em; }
@media (max-width: 36rem) { dl { grid-template-columns: 1fr; } dd { grid-column: 1; margin-bottom: 0.5rem; } }
@media print { body { max-width: none; } }
`;
