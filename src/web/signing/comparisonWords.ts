import { capital } from '../../ground/words.ts';
import type { Changes, PieceComparison } from '../../piece/comparePieces.ts';
import { type Finding, tellsOfPiece } from '../../piece/finding.ts';
import type { Observation } from '../../piece/observation.ts';
import { expectedInWords, shortWords } from '../../piece/observationWords.ts';
import { fieldName } from '../history/fieldName.ts';
import type { NameBook } from '../history/nameBook.ts';
import { valueWords } from '../history/valueWords.ts';

/** One heading of the comparison, with a line for each thing under it. */
export type ComparisonList = { title: string; items: readonly string[] };

/** Everything that differs, in words; a heading with nothing under it is left out. */
export function comparisonLists(compared: PieceComparison, names: NameBook): ComparisonList[] {
  const fields = compared.fields.map(({ path, was, now }) => {
    const [before, after] = [valueWords(path, was), valueWords(path, now)];
    const name = capital(fieldName(path, names));
    if (before === undefined) return `${name}: now “${after ?? ''}”`;
    return after === undefined
      ? `${name}: was “${before}”, now empty`
      : `${name}: was “${before}”, now “${after}”`;
  });
  return [
    ...listsOf(compared.findings, 'Findings', (each) => findingWords(each, names), findingChange(names)),
    ...listsOf(
      compared.observations,
      'Your own observations',
      (each) => `${whichObservation(each, names)}: ${expectedInWords(each.expected)}`,
      observationChange(names),
    ),
    ...listsOf(
      compared.measures,
      'Measures',
      ({ id, asEntered }) => `${capital(names.measure(id))}: ${asEntered}`,
      (was, now) => `${capital(names.measure(now.id))}: was ${was.asEntered}, now ${now.asEntered}`,
    ),
    ...listsOf(
      compared.photos,
      'Photos',
      ({ id }) => capital(names.photo(id)),
      (_was, now) => `${capital(names.photo(now.id))}: its words, marks or place changed`,
    ),
    ...listsOf(
      compared.parts,
      'Parts',
      ({ id }) => capital(names.part(id)),
      (_was, now) => capital(names.part(now.id)),
    ),
    ...listsOf(
      compared.bench,
      'At the bench',
      ({ title, says }) => `${title}: ${says}`,
      (_was, now) => now.title,
    ),
    { title: 'Words and fields', items: fields },
  ].filter(({ items }) => items.length > 0);
}

function listsOf<One>(
  changes: Changes<One>,
  title: string,
  words: (one: One) => string,
  changed: (was: One, now: One) => string,
): ComparisonList[] {
  return [
    { title: `${title} added`, items: changes.added.map(words) },
    { title: `${title} removed`, items: changes.removed.map(words) },
    { title: `${title} changed`, items: changes.changed.map(({ was, now }) => changed(was, now)) },
  ];
}

function whichObservation({ words, part }: Observation, names: NameBook): string {
  return `“${shortWords(words)}”${part === undefined ? '' : `, ${names.part(part)}`}`;
}

function observationChange(names: NameBook): (was: Observation, now: Observation) => string {
  return (was, now) => {
    const [before, after] = [expectedInWords(was.expected), expectedInWords(now.expected)];
    const what = whichObservation(was, names);
    if (was.words !== now.words) return `${what}: now “${shortWords(now.words)}”, ${after}`;
    return before === after
      ? `${what}: its part or photos changed`
      : `${what}: was ${before}; is now ${after}`;
  };
}

function findingWords(finding: Finding, names: NameBook): string {
  return `${whichFinding(finding, names)}: ${stateWords(finding)}`;
}

function findingChange(names: NameBook): (was: Finding, now: Finding) => string {
  return (was, now) => {
    const [before, after] = [stateWords(was), stateWords(now)];
    const what = whichFinding(now, names);
    return before === after ? `${what}: its words or photos changed` : `${what}: was ${before}, now ${after}`;
  };
}

function whichFinding({ sign, part }: Finding, names: NameBook): string {
  return `“${names.sign(sign)}”${part === undefined ? '' : `, ${names.part(part)}`}`;
}

function stateWords({ state, sure, measured }: Finding): string {
  const seen = state.replaceAll('-', ' ');
  if (!tellsOfPiece(state)) return seen;
  if (measured !== undefined) return `${seen}, measured`;
  return sure === 'fairly' ? `${seen}, fairly sure` : sure === 'hint' ? `${seen}, a hint` : seen;
}
