import type { Entry } from '../../src/knowledge/entry.ts';
import { onWhoseWord, type Word } from '../../src/knowledge/onWhoseWord.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';

/** Prints how much the knowledge holds, on whose word its figures stand, and what cites no published work. */
export function printCounts(knowledge: Knowledge, entries: readonly Entry[]): void {
  const count = (table: object, one: string, many: string) => {
    const number = Object.keys(table).length;
    return `${number} ${number === 1 ? one : many}`;
  };
  console.log(
    `Knowledge ${knowledge.version}: ${[
      count(knowledge.forms, 'form', 'forms'),
      `${count(knowledge.signs, 'sign', 'signs')} in ${count(knowledge.families, 'family', 'families')}`,
      count(knowledge.alterations, 'alteration', 'alterations'),
      count(knowledge.shops, 'shop or region', 'shops and regions'),
      count(knowledge.sources, 'work', 'works'),
    ].join(', ')}.`,
  );
  const { figures, spans, withoutWork } = onWhoseWord(entries);
  console.log(`Figures: ${inWords(figures)}, ${figures.counted} counted from published records.`);
  console.log(`Spans of years: ${inWords(spans)}.`);
  if (withoutWork.length === 0) {
    console.log('Every entry cites at least one published work.');
    return;
  }
  console.log(`No published work is cited by ${withoutWork.length} entries:`);
  const kinds = [...new Set(withoutWork.map((each) => each.kind))];
  for (const kind of kinds) {
    const ids = withoutWork.filter((each) => each.kind === kind).map((each) => each.id);
    console.log(`  ${kind}: ${ids.join(', ')}`);
  }
}

function inWords(count: Record<Word, number>): string {
  return (
    `${count.source} from a published work, ${count['common practice']} by common practice, ` +
    `${count.judgement} by judgment, ${count['from memory']} from memory`
  );
}
