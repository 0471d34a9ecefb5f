import { capital } from '../../../ground/words.ts';
import { idWords } from '../../../knowledge/idWords.ts';
import type { OwnKind } from './fieldShapes.ts';

/** How a field is called, and what is said beneath its name. */
export type FieldWords = { label: string; note?: string };

const shared: Record<string, FieldWords> = {
  name: { label: 'Name' },
  sources: { label: 'Works it leans on', note: 'From the shelf of sources.' },
  basis: {
    label: 'Basis of the figures',
    note: 'So that another can disagree with a number.',
  },
  'basis.source': { label: 'A work', note: 'Only where the work prints it.' },
  'basis.at': { label: 'Where in the work', note: 'Page, plate or table.' },
  'basis.by': { label: 'Or your own word' },
  'basis.why': { label: 'Why these figures', note: 'One sentence: what you saw, on how many, where.' },
};

const ofSign: Record<string, FieldWords> = {
  look: {
    label: 'What to look for, and how',
    note: 'Whole sentences, as they are read kneeling under a piece.',
  },
  mistakenFor: { label: 'What it is mistaken for', note: 'Signs from the shelf, or words of your own.' },
  on: { label: 'Parts it can be on' },
  formFamilies: { label: 'Asked only of', note: 'Of all furniture where none is chosen.' },
  notForms: { label: 'Not asked of', note: 'Forms that can’t show it, by their short names: windsor-chair.' },
  when: {
    label: 'Asked only of a piece with',
    note: 'Choices of its form, each with the feature it is of; of all where none is chosen.',
  },
  make: { label: 'Asked only of parts that are', note: 'Of all where none is chosen.' },
  hangsOn: {
    label: 'What makes it appear',
    note: 'The one thing it comes from, not what you would like to conclude.',
  },
  group: {
    label: 'Counted together with',
    note: 'A name shared by signs that say nearly the same, so that they are not counted twice. Mostly left blank.',
  },
  minutes: { label: 'Minutes it takes' },
  needs: { label: 'What it needs' },
  inPhoto: { label: 'What a photograph can show of it' },
  caution: {
    label: 'Caution',
    note: 'Wherever looking can hurt: lifting, toppling, blades, old pins, lead, arsenic, mold.',
  },
  span: { label: 'When it was in use' },
  'span.earliest': { label: 'Earliest year' },
  'span.commonFrom': { label: 'Common from' },
  'span.commonUntil': { label: 'Common until', note: 'Blank if it never went out.' },
  'span.latest': { label: 'Gone by' },
  'span.hardFloor': { label: 'Nothing can show it earlier (a patent, law or first making, cited)' },
  'span.source': { label: 'The work that says so' },
  'span.at': { label: 'Where in the work' },
  'span.by': { label: 'Or its basis' },
  shows: {
    label: 'Of 100 such parts, how many show it',
    note: 'Best is what you would bet on; lowest and highest are where you would be surprised to be wrong.',
  },
};

const ofShop: Record<string, FieldWords> = {
  kind: { label: 'Kind' },
  invented: { label: 'It is invented, for practice' },
  place: { label: 'Place' },
  placeWords: { label: 'Words of a claimed place that point to it', note: 'Parted by commas.' },
  years: { label: 'Years', note: 'From and to.' },
  forms: { label: 'Forms it made' },
  share: {
    label: 'Of 100 pieces of the period of these forms, how many come from here',
    note: 'Stay low: shops that take much leave little for those not listed.',
  },
  what: { label: 'What it was', note: 'Whole sentences.' },
  habits: {
    label: 'Habits',
    note: 'Signs that show more or less often in its work than elsewhere. At least one.',
  },
  'habits.sign': { label: 'Sign' },
  'habits.on': { label: 'Only on' },
  'habits.shows': { label: 'Of 100 such parts from here, how many show it' },
  woods: { label: 'Woods' },
  whoWorked: {
    label: 'Who did the work',
    note: 'Journeymen, the enslaved, women, outworkers: whoever worked under the name.',
  },
  'whoWorked.words': { label: 'What is known of them', note: 'Whole sentences.' },
  'whoWorked.sources': { label: 'Works that tell it', note: 'From the shelf of sources.' },
  'whoWorked.at': { label: 'Where in them' },
  'whoWorked.by': { label: 'Or its basis' },
};

/** The words of a field; one that has none yet is called by its name in the schema. */
export function wordsOf(kind: OwnKind, path: string): FieldWords {
  const found = (kind === 'sign' ? ofSign : ofShop)[path] ?? shared[path];
  const last = path.split('.').at(-1) ?? path;
  return found ?? { label: capital(last.replaceAll(/([A-Z])/g, ' $1')) };
}

/** The words of a choice; one that has none is shown as it stands in the file. */
export function optionWords(option: string): string {
  return options[option] ?? capital(idWords(option));
}

const options: Record<string, string> = {
  nothing: 'Nothing: as it stands',
  'turned-over': 'Turning it over',
  'seat-lifted': 'Lifting the seat out',
  'part-removed': 'Taking a part off, by the owner’s leave',
  'owners-leave': 'The owner’s leave',
  laboratory: 'A laboratory',
  clear: 'It can be seen clearly',
  hint: 'A hint at best',
  no: 'Nothing',
  judgement: 'My own estimate',
  'from memory': 'Read once, from memory',
  case: 'Cases',
  table: 'Tables',
  clock: 'Clocks',
  glass: 'Looking glasses',
};
