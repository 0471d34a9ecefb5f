import type { FieldShape } from './fieldShapes.ts';

/** An entry as it is being written: numbers are still text, and anything may be missing. */
export type Draft = { [field: string]: unknown };

/** A figure as it is typed: best, lowest and highest of 100. */
export type FigureTyped = { best: string; low: string; high: string };

/** The three numbers of a figure's text `86, 72–94`, or of as much of it as was typed. */
export function figureTyped(figure: unknown): FigureTyped {
  const text =
    typeof figure === 'string' ? figure : ((figure as { in100?: string } | undefined)?.in100 ?? '');
  const [best = '', range = ''] = text.split(',');
  const [low = '', high = ''] = range.split('–');
  return { best: best.trim(), low: low.trim(), high: high.trim() };
}

/** The figure with other numbers; what else it says (its source, its reason) stays. Nothing typed is no figure. */
export function figureWith(figure: unknown, { best, low, high }: FigureTyped): unknown {
  const in100 = best === '' && low === '' && high === '' ? '' : `${best}, ${low}–${high}`;
  return typeof figure === 'object' && figure !== null ? { ...figure, in100 } : in100;
}

/**
 * The entry that a draft stands for, in the shape of the knowledge files: numbers read, blanks left out. What can't be
 * read as a number is handed on as it was typed, so that its fault is said and not hidden.
 */
export function entryOf(fields: readonly FieldShape[], draft: Draft): Draft {
  return Object.fromEntries(
    fields.flatMap((field) => {
      const value = fieldValue(field, draft[field.name]);
      return value === undefined ? [] : [[field.name, value]];
    }),
  );
}

function fieldValue(field: FieldShape, value: unknown): unknown {
  switch (field.as) {
    case 'number':
      return numberOf(value);
    case 'flag':
      return value === true ? true : undefined;
    case 'years':
      return Array.isArray(value) && value.some((each) => String(each ?? '').trim() !== '')
        ? value.map((each) => numberOf(each) ?? '')
        : undefined;
    case 'list':
    case 'several':
      return itemsOf(value);
    case 'lists': {
      const given = Object.entries((value ?? {}) as Draft).filter(
        ([, items]) => itemsOf(items) !== undefined,
      );
      return given.length === 0 ? undefined : Object.fromEntries(given);
    }
    case 'object': {
      const inner = entryOf(field.fields, (value ?? {}) as Draft);
      return Object.keys(inner).length === 0 ? undefined : inner;
    }
    case 'rows':
      return Array.isArray(value) && value.length > 0
        ? value.map((row) => entryOf(field.fields, row as Draft))
        : undefined;
    case 'figures': {
      const given = Object.entries((value ?? {}) as Draft).filter(([, figure]) => !isBlank(figure));
      return Object.fromEntries(given.map(([state, figure]) => [state, tidied(figure)]));
    }
    case 'figure':
      return isBlank(value) ? undefined : tidied(value);
    default:
      return typeof value === 'string' && value.trim() !== '' ? value.trim() : undefined;
  }
}

function itemsOf(value: unknown): string[] | undefined {
  const items = Array.isArray(value) ? value.map((each) => String(each).trim()).filter(Boolean) : [];
  return items.length > 0 ? items : undefined;
}

function isBlank(figure: unknown): boolean {
  const { best, low, high } = figureTyped(figure);
  return best === '' && low === '' && high === '';
}

function tidied(figure: unknown): unknown {
  const point = (text: string) => text.replaceAll(/\s/g, '').replace(/^\./, '0.');
  const { best, low, high } = figureTyped(figure);
  return figureWith(figure, { best: point(best), low: point(low), high: point(high) });
}

function numberOf(value: unknown): unknown {
  const text = String(value ?? '').trim();
  if (text === '') return undefined;
  const number = Number(text.replace(',', '.'));
  return Number.isFinite(number) ? number : text;
}

/**
 * The id of a new entry, made from its name; a number is added where another entry has it.
 *
 * @param taken  every id in use, the program's own among them
 */
export function idFromName(name: string, taken: ReadonlySet<string>): string {
  const words = name
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 48)
    .replace(/-+$/, '');
  const id = `own-${words === '' ? 'entry' : words}`;
  let free = id;
  for (let count = 2; taken.has(free); count++) free = `${id}-${count}`;
  return free;
}
