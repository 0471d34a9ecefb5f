import type { FieldGuide } from './fieldGuide.ts';
import type { GuideEntry } from './fieldGuideEntry.ts';
import { guideTemplate } from './typst/guideTemplate.ts';
import { template } from './typst/template.ts';
import { type NamedPicture, type PictureShelf, pictureShelf } from './typst/typstBlocks.ts';
import { typstArray, typstMm, typstString, typstWords } from './typst/typstText.ts';

/** A guide as Typst source, with the drawings it takes in. Its texts stand in string literals only. */
export function fieldGuideTypst(guide: FieldGuide): { source: string; pictures: NamedPicture[] } {
  const shelf = pictureShelf();
  const drawn = new Set<string>();
  const source = `${template}
${guideTemplate}
#set document(title: ${typstString(`Field guide: ${guide.title}`)}, author: (), date: none)
#show: guide-pages.with(head: ${typstString(guide.title)}, foot: ${typstString(`Underside · knowledge ${guide.version.slice(0, 8)}`)})
#title-block("Field guide", ${typstString(guide.title)}, "")
#par(text(${typstString(guide.under)}))
${guide.ofYourOwn === '' ? '' : `#par(text(fill: walnut, weight: 600, ${typstString(guide.ofYourOwn)}))`}
${guide.cautions.length === 0 ? '' : `#notice("care", "Before anything is touched", ${typstArray(guide.cautions.map((each) => typstWords(each)))})`}
${guide.views.map((row) => `#views(${typstArray(row.map((view) => `(path: ${typstString(shelf.put(view.svg))}, alt: ${typstString(view.alternative)}, caption: ${typstString(view.caption)}, width: ${typstMm(view.widthMm)}, height: ${typstMm(view.heightMm)})`))})`).join('\n')}
${guide.sides === '' ? '' : `#par(text(size: 0.9em, ${typstString(guide.sides)}))`}
${
  guide.byPart.length === 0
    ? ''
    : `#heading(level: 1, "Which signs on which part")\n#parts(${typstArray(guide.byPart.map(({ part, numbers }) => `(${typstString(part)}, ${typstString(inRuns(numbers))})`))})`
}
${guide.stages
  .map(
    (stage) =>
      `#heading(level: 1, ${typstString(stage.title)})\n${stage.groups
        .map(
          (group) =>
            `#heading(level: 2, ${typstString(group.name)})\n${group.entries.map((entry) => typstEntry(entry, shelf, drawn)).join('\n')}`,
        )
        .join('\n')}`,
  )
  .join('\n')}
${guide.works.length === 0 ? '' : `#heading(level: 1, "Works cited")\n#works(${typstArray(guide.works.map(({ words }) => typstWords(words)))})`}
`;
  return { source, pictures: shelf.all() };
}

/** A drawing that shows two signs is printed with the first; the second points back to it. */
function typstEntry(entry: GuideEntry, shelf: PictureShelf, drawn: Set<string>): string {
  const fresh = entry.drawings.filter(({ id }) => !drawn.has(id));
  const again = entry.drawings.length > fresh.length;
  for (const { id } of fresh) drawn.add(id);
  const drawings = fresh.map(
    (drawing) =>
      `(path: ${typstString(shelf.put(drawing.svg))}, alt: ${typstString(drawing.alternative)}, caption: ${typstString(drawing.caption)})`,
  );
  return `#entry(number: ${entry.number}, name: ${typstString(entry.name)}, mine: ${entry.mine}, look: ${typstString(entry.look)}, caution: ${typstString(entry.caution)}, facts: ${typstString(entry.facts)}, mistaken: ${typstString(entry.mistakenFor)}, figures: ${typstString(entry.figures)}, works: ${typstString(entry.works)}, again: ${again}, drawings: ${typstArray(drawings)})`;
}

/** Numbers in their order, three and more in a row as a run: `1–4, 7, 9`. */
export function inRuns(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of numbers) {
    const last = runs.at(-1);
    if (last !== undefined && number === last[1] + 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs
    .map(([from, to]) => (from === to ? `${from}` : `${from}${to === from + 1 ? ', ' : '–'}${to}`))
    .join(', ');
}
