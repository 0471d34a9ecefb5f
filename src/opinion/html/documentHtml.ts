import type { Block, OpinionDocument, Plate, Words } from '../opinionDocument.ts';
import { escapeHtml } from './escapeHtml.ts';

/** Where the picture of a photo stands, beside the page; undefined where there is none a browser shows. */
export type PictureOf = (sha256: string) => string | undefined;

/** A document's sections as HTML: headings, text, tables, pictures; every text escaped, no script, no style. */
export function documentHtml(document: OpinionDocument, pictureOf: PictureOf): string {
  const head = document.head.map((block) => blockHtml(block, pictureOf)).join('\n');
  const sections = document.sections.map(({ id, title, blocks, answer }) => {
    const inner = blocks.map((block) => blockHtml(block, pictureOf)).join('\n');
    const body = `<h2>${escapeHtml(title)}</h2>\n${inner}`;
    return `<section id="s-${escapeHtml(id)}">${answer === true ? `<details><summary>Show the answer</summary>${body}</details>` : body}</section>`;
  });
  return [head, ...sections].join('\n');
}

function blockHtml(block: Block, pictureOf: PictureOf): string {
  switch (block.kind) {
    case 'paragraph':
      return `<p class="${block.as ?? 'plain'}">${wordsHtml(block.words)}</p>`;
    case 'heading':
      return `<h3>${escapeHtml(block.words)}</h3>`;
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${wordsHtml(item)}</li>`).join('')}</ul>`;
    case 'facts':
      return factsHtml(block.rows);
    case 'front':
      return factsHtml(block.rows) + smallPlateHtml(block.plate, pictureOf);
    case 'strip':
      return block.plates.map((plate) => smallPlateHtml(plate, pictureOf)).join('\n');
    case 'table':
      return tableHtml(block);
    case 'notice':
      return `<div class="notice"><strong>${escapeHtml(block.title)}</strong>${block.words.map((words) => `<p>${wordsHtml(words)}</p>`).join('')}</div>`;
    case 'pictures':
      return block.pictures
        .map(({ svg, caption, alternative }) => figure(drawn(svg), alternative, escapeHtml(caption)))
        .join('\n');
    case 'key':
      return `<p>${escapeHtml(block.title)}: ${block.entries.map(({ svg, words }) => `<img class="swatch" src="${drawn(svg)}" alt=""> ${escapeHtml(words)}`).join('; ')}</p>`;
    case 'plate':
      return plateHtml(block.plate, pictureOf);
    case 'signature':
      return `${block.statements.map((words) => `<p>${wordsHtml(words)}</p>`).join('')}<p><strong>${escapeHtml(block.name)}</strong> ${escapeHtml(block.day)}</p>`;
    default:
      // A kind of block that a newer document has: left out, never guessed at.
      return '';
  }
}

function tableHtml({ caption, columns, groups }: Extract<Block, { kind: 'table' }>): string {
  const heads = columns.map((column) => `<th scope="col">${escapeHtml(column.name)}</th>`).join('');
  const bodies = groups.map(({ name, note, rows }) => {
    const group =
      name === undefined
        ? ''
        : `<tr><th scope="rowgroup" colspan="${columns.length}">${escapeHtml(name)}${note === undefined ? '' : ` <small>${escapeHtml(note)}</small>`}</th></tr>`;
    const lines = rows.map(
      (cells) => `<tr>${cells.map((cell) => `<td>${wordsHtml(cell)}</td>`).join('')}</tr>`,
    );
    return `<tbody>${group}${lines.join('')}</tbody>`;
  });
  return `<div class="wide"><table><caption>${escapeHtml(caption)}</caption><thead><tr>${heads}</tr></thead>${bodies.join('')}</table></div>`;
}

function factsHtml(rows: Extract<Block, { kind: 'facts' }>['rows']): string {
  return `<dl>${rows.map((row) => `<dt>${escapeHtml(row.name)}</dt>${row.words.map((words) => `<dd>${wordsHtml(words)}</dd>`).join('')}`).join('')}</dl>`;
}

function smallPlateHtml(plate: Plate, pictureOf: PictureOf): string {
  return figure(pictureOf(plate.sha256), plate.alternative, `<strong>Plate ${plate.number}</strong>`);
}

function plateHtml(plate: Plate, pictureOf: PictureOf): string {
  const marks = plate.marks
    .map(({ number, says }) => `<li value="${number}">${escapeHtml(says)}</li>`)
    .join('');
  const caption = `<strong>Plate ${plate.number}.</strong> ${escapeHtml(plate.caption)} <small>${escapeHtml(plate.origin)}</small>${marks === '' ? '' : `<ol>${marks}</ol>`}`;
  return figure(pictureOf(plate.sha256), plate.alternative, caption);
}

function figure(source: string | undefined, alternative: string, caption: string): string {
  const picture =
    source === undefined
      ? '<p class="note">This picture is of a kind that browsers don’t show: its file is in the folder “photos”.</p>'
      : `<img src="${escapeHtml(source)}" alt="${escapeHtml(alternative)}">`;
  return `<figure>${picture}<figcaption>${caption}</figcaption></figure>`;
}

/** As a picture in an address: nothing in a picture can act on the page. */
function drawn(svg: string): string {
  return `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`;
}

function wordsHtml(words: Words): string {
  if (typeof words === 'string') return escapeHtml(words);
  return words
    .map((run) => {
      if (typeof run === 'string') return escapeHtml(run);
      if ('strong' in run) return `<strong>${escapeHtml(run.strong)}</strong>`;
      if ('em' in run) return `<em>${escapeHtml(run.em)}</em>`;
      return /^https?:\/\//.test(run.link)
        ? `<a href="${escapeHtml(run.link)}" rel="noreferrer">${escapeHtml(run.words)}</a>`
        : escapeHtml(run.words);
    })
    .join('');
}
