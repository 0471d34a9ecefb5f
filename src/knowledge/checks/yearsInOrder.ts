import { type Entry, soundEntries } from '../entry.ts';
import type { KnowledgeFault } from '../knowledgeFault.ts';
import type { YamlPath } from '../parseYaml.ts';
import { type Check, faultIn } from './check.ts';

/** Years run forwards, and a hard floor has a published source. */
export const yearsInOrder: Check = {
  id: 'years-in-order',
  protects: 'Years run forwards, and nothing excludes a date without a published floor.',
  find: ({ entries }) =>
    entries.flatMap((entry) => [
      ...runsOf(entry).flatMap((run) => backwards(entry, run)),
      ...softFloor(entry),
    ]),
};

/** Years that must not fall, with the path of their holder. */
type Run = { path: YamlPath; years: readonly (number | undefined)[]; strictly?: boolean };

function runsOf(entry: Entry): Run[] {
  const [sign] = soundEntries([entry], 'sign');
  const [form] = soundEntries([entry], 'form');
  const [shop] = soundEntries([entry], 'shop');
  const [making] = soundEntries([entry], 'making');
  const runs: Run[] = [];
  if (sign?.value.span !== undefined) {
    const { earliest, rareUntil, commonFrom, commonUntil, latest } = sign.value.span;
    runs.push({ path: ['span'], years: [earliest, rareUntil, commonFrom, commonUntil, latest] });
  }
  if (form !== undefined) runs.push({ path: ['styleSpan'], years: form.value.styleSpan });
  if (shop !== undefined) runs.push({ path: ['years'], years: shop.value.years });
  if (making !== undefined) runs.push(...linesOf(making.value, []));
  return runs;
}

/** Every line of making.yaml: lists of pairs whose first numbers are years or ages. */
function linesOf(value: unknown, path: YamlPath): Run[] {
  if (value === null || typeof value !== 'object') return [];
  if (Array.isArray(value)) {
    if (!value.every((each) => Array.isArray(each) && each.length === 2)) return [];
    return [{ path, years: value.map((point: number[]) => point[0]), strictly: true }];
  }
  return Object.entries(value).flatMap(([key, each]) => linesOf(each, [...path, key]));
}

function backwards(entry: Entry, { path, years, strictly }: Run): KnowledgeFault[] {
  const given = years.filter((year) => year !== undefined);
  const wrong = given.find((year, index) => {
    const before = given[index - 1];
    return before !== undefined && (strictly === true ? year <= before : year < before);
  });
  if (wrong === undefined) return [];
  return [
    faultIn('years-in-order', entry, path, {
      what: `${path.map(String).join(' → ')} runs backwards at ${wrong}.`,
      mend: 'Put the years in order, earliest first.',
      example: 'span: { earliest: 1814, commonFrom: 1830, commonUntil: 1900, latest: 1940 }',
    }),
  ];
}

function softFloor(entry: Entry): KnowledgeFault[] {
  const [sign] = soundEntries([entry], 'sign');
  const span = sign?.value.span;
  if (sign === undefined || span === undefined || !span.hardFloor || span.source !== undefined) return [];
  return [
    faultIn('years-in-order', sign, ['span', 'hardFloor'], {
      what: `A hard floor at ${span.earliest} excludes every earlier date, but no published source stands beside it.`,
      mend: 'Give the patent, law or first recorded making as its source, or take hardFloor out.',
      example: 'span: { earliest: 1936, commonFrom: 1945, hardFloor: true, source: us2046343 }',
    }),
  ];
}
