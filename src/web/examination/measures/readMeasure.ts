import type { Form } from '../../../knowledge/schema.ts';
import type { Json } from '../../../piece/event.ts';
import type { Measure } from '../../../piece/measure.ts';
import { formatBoth, parseLength } from '../../../units/length.ts';
import type { Act } from '../answerSign.ts';

export type FormMeasure = Form['measures'][number];

/** What an entry in a measure's field comes to: nothing, a length with a doubt perhaps, or why it can't be read. */
export type MeasureEntry =
  | { kind: 'empty' }
  | { kind: 'length'; mm: number; echo: string; doubt: string | undefined }
  | { kind: 'unreadable'; message: string };

/** Reads what was typed for a measure; a length outside what is usual is asked about, never refused. */
export function readMeasure(
  text: string,
  usual: Pick<FormMeasure, 'lowMm' | 'highMm'> | undefined,
): MeasureEntry {
  if (text.trim() === '') return { kind: 'empty' };
  const read = parseLength(text);
  if (!read.ok) return { kind: 'unreadable', message: read.message };
  return { kind: 'length', mm: read.mm, echo: formatBoth(read.mm), doubt: doubtOf(read.mm, usual) };
}

/** The act of recording a measure, or withdrawing it when nothing is entered; undefined when nothing is to be done. */
export function measureAct(
  id: string,
  text: string,
  before: Measure | undefined,
  words = before?.words ?? '',
): Act | undefined {
  const entry = readMeasure(text, undefined);
  if (entry.kind === 'unreadable') return undefined;
  if (entry.kind === 'empty') {
    return before === undefined
      ? undefined
      : { kind: 'measure-withdrawn', changes: [{ path: ['measures', id] }] };
  }
  if (before?.asEntered === text.trim() && before.words === words) return undefined;
  const measure: Measure = { id, mm: entry.mm, asEntered: text.trim(), words };
  return { kind: 'measure-recorded', changes: [{ path: ['measures', id], to: measure as Json }] };
}

/** The measures of a form that this piece has, given its features. */
export function measuresOf(form: Form, features: Record<string, string>): FormMeasure[] {
  return form.measures.filter((measure) =>
    Object.entries(measure.when).every(
      ([feature, options]) => features[feature] === undefined || options.includes(features[feature]),
    ),
  );
}

function doubtOf(mm: number, usual: Pick<FormMeasure, 'lowMm' | 'highMm'> | undefined): string | undefined {
  if (usual === undefined || (mm >= usual.lowMm && mm <= usual.highMm)) return undefined;
  const side = mm < usual.lowMm ? 'less' : 'more';
  return `That is ${side} than is usual: ${formatBoth(usual.lowMm)} to ${formatBoth(usual.highMm)}. Is it right as written? If so, leave it.`;
}
