import { dayWords } from '../units/days.ts';
import type { OpinionDocument } from './opinionDocument.ts';
import type { Paper } from './typst/plateLayout.ts';
import { template } from './typst/template.ts';
import { type NamedPicture, pictureShelf, typstBlock, typstSection } from './typst/typstBlocks.ts';
import type { PicturesAtHand } from './typst/typstPlate.ts';
import { typstArray, typstString } from './typst/typstText.ts';

/**
 * An opinion as Typst source, with the drawings it takes in.
 *
 * Everything that comes from the document stands in string literals, which Typst never reads as markup.
 *
 * @param options.plates  the photos whose pictures are at hand; the others get a sentence in their place
 */
export function opinionTypst(
  document: OpinionDocument,
  options: { paper: Paper; plates: PicturesAtHand },
): { source: string; pictures: NamedPicture[] } {
  const shelf = pictureShelf();
  const { draft, title, author } = document;
  const foot = [
    author,
    dayWords(document.madeOn),
    draft ? 'draft, not signed' : '',
    document.issued ?? '',
    document.example ? 'an invented example' : '',
  ]
    .filter((each) => each !== '')
    .join(' · ');
  const source = `${template}
#set document(title: ${typstString(title)}, author: ${typstArray(author === '' ? [] : [typstString(author)])}, keywords: ${typstArray(document.keywords.map(typstString))}, date: ${dateOf(document.madeOn)})
#show: set-pages.with(paper: ${typstString(options.paper)}, head: ${typstString(shortened(title))}, foot: ${typstString(shortened(foot, 150))}, draft: ${draft}${document.paper === 'letter' ? ', tight: true' : ''})
#title-block(${typstString(draft ? `${document.above} · draft` : document.above)}, ${typstString(title)}, ${typstString(document.line)})
${document.head.map((block) => typstBlock(block, shelf, options.plates, options.paper)).join('\n')}
${document.sections.map((section) => typstSection(section, shelf, options.plates, options.paper)).join('\n')}
`;
  return { source, pictures: shelf.all() };
}

/** The day as Typst holds it: the file's own date, so that no clock is read. */
function dateOf(day: string): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day);
  return found === null
    ? 'none'
    : `datetime(year: ${Number(found[1])}, month: ${Number(found[2])}, day: ${Number(found[3])})`;
}

function shortened(text: string, most = 80): string {
  const signs = [...text.replace(/\s+/gu, ' ')];
  return signs.length <= most
    ? signs.join('')
    : `${signs
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`;
}
