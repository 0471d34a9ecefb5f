import { type Entry, soundEntries } from '../entry.ts';
import type { KnowledgeFault } from '../knowledgeFault.ts';
import type { Measurements } from '../measurementSchema.ts';
import type { YamlPath } from '../parseYaml.ts';
import { type Check, type CheckedKnowledge, faultIn } from './check.ts';
import { citations } from './citations.ts';

/** Whatever an entry points to is there: works, parts, signs, forms, alterations, features. */
export const referencesExist: Check = {
  id: 'references-exist',
  protects: 'Whatever an entry points to is there, so that no sign, habit or source is silently left out.',
  find: (knowledge) => {
    const known = whatIsKnown(knowledge);
    // Without any form every part would be called missing; one fault says it.
    if (!knowledge.entries.some((entry) => entry.kind === 'form')) return [noForm];
    return knowledge.entries.flatMap((entry) =>
      inLists(pointersOf(entry).filter(({ to, id }) => !known[to].has(id))).map(({ path, to, ids }) =>
        faultIn('references-exist', entry, path, {
          what: `It points to the ${to} ${ids.map((id) => `"${id}"`).join(', ')}, not in the knowledge files.`,
          mend: `Correct the spelling${ids.map((id) => nearest(id, known[to])).join('')}, or add the ${to}.`,
          example: rightPointers[to],
        }),
      ),
    );
  },
};

const noForm: KnowledgeFault = {
  code: 'knowledge.references-exist',
  file: 'forms',
  line: 1,
  entry: '',
  what: 'The folder forms/ holds no form, so that no part can be found.',
  mend: 'Put the files of the forms back.',
  example: 'forms/side-chair.yaml',
};

/** Pointers of one list become one, so that a list of ten lost parts is one fault. */
function inLists(pointers: readonly Pointer[]): { path: YamlPath; to: Pointed; ids: string[] }[] {
  const lists = new Map<string, { path: YamlPath; to: Pointed; ids: string[] }>();
  for (const { path, to, id } of pointers) {
    const list = typeof path.at(-1) === 'number' ? path.slice(0, -1) : path;
    const key = `${to} ${list.map(String).join(' ')}`;
    const known = lists.get(key);
    if (known === undefined) lists.set(key, { path, to, ids: [id] });
    else known.ids.push(id);
  }
  return [...lists.values()];
}

const rightPointers = {
  work: 'sources: [kelly, white2005]      # ids in sources.yaml',
  'part kind': 'on: [front-rail, side-rail]      # kinds or groups of part-kinds.yaml, or whole',
  part: "part: front-leg-left             # an id among this form's parts",
  sign: 'sign: rail-open-dovetail         # an id in signs/',
  form: 'forms: [side-chair, armchair]    # ids in forms/',
  alteration: 'hangsOn: alteration/arms-added   # an id in alterations/',
  'starting odds': 'defaultOdds: even                # a name under startingOdds',
  feature: 'when: { seat: [slip, rush] }     # a feature of this form and its options',
} as const;
type Pointed = keyof typeof rightPointers;
type Pointer = { path: YamlPath; to: Pointed; id: string };

function whatIsKnown({ entries }: CheckedKnowledge): Record<Pointed, Set<string>> {
  const ids = (kind: Entry['kind']) =>
    entries.filter((entry) => entry.kind === kind).map((entry) => entry.id);
  const forms = soundEntries(entries, 'form');
  const inForms = (each: (form: (typeof forms)[number]['value']) => string[]) =>
    forms.flatMap((form) => each(form.value).map((id) => `${form.id} ${id}`));
  const making = soundEntries(entries, 'making')[0]?.value;
  const listed = ids('partKind');
  return {
    work: new Set(ids('work')),
    'part kind': new Set(['whole', ...(listed.length > 0 ? listed : entries.flatMap(kindsIn))]),
    part: new Set(inForms((form) => form.parts.map((part) => part.id))),
    sign: new Set(ids('sign')),
    form: new Set(ids('form')),
    alteration: new Set(ids('alteration')),
    'starting odds': new Set(Object.keys(making?.startingOdds ?? {})),
    feature: new Set(
      inForms((form) =>
        form.features.flatMap((feature) => feature.options.map((option) => `${feature.id}: ${option.id}`)),
      ),
    ),
  };
}

/** The kinds of part a form names, even where the form is otherwise misshapen. */
function kindsIn(entry: Entry): string[] {
  const parts = entry.kind === 'form' ? (entry.raw as { parts?: unknown } | null)?.parts : undefined;
  return Array.isArray(parts)
    ? parts.flatMap((part: { kind?: unknown } | null) => (typeof part?.kind === 'string' ? [part.kind] : []))
    : [];
}

function pointersOf(entry: Entry): Pointer[] {
  const cited = citations(entry).map(({ path, id }): Pointer => ({ path, to: 'work', id }));
  return [...cited, ...signPointers(entry), ...formPointers(entry), ...otherPointers(entry)];
}

function signPointers(entry: Entry): Pointer[] {
  const [sign] = soundEntries([entry], 'sign');
  if (sign === undefined) return [];
  const { on, notForms, hangsOn, mistakenFor } = sign.value;
  const alteration = /^alteration\/(.+)$/.exec(hangsOn)?.[1];
  return [
    ...on.map((id, index): Pointer => ({ path: ['on', index], to: 'part kind', id })),
    ...(notForms ?? []).map((id, index): Pointer => ({ path: ['notForms', index], to: 'form', id })),
    ...(alteration === undefined ? [] : [{ path: ['hangsOn'], to: 'alteration', id: alteration } as const]),
    // Words with a hyphen and no space are taken for an id; anything else for plain words.
    ...mistakenFor.flatMap((id, index): Pointer[] =>
      /^[a-z0-9]+(-[a-z0-9]+)+$/.test(id) ? [{ path: ['mistakenFor', index], to: 'sign', id }] : [],
    ),
  ];
}

function formPointers(entry: Entry): Pointer[] {
  const [form] = soundEntries([entry], 'form');
  if (form === undefined) return [];
  const { id: formId, parts, measures, drawing, alterations } = form.value;
  const features = (when: Record<string, string[]>, path: YamlPath) =>
    Object.entries(when).flatMap(([feature, options]) =>
      options.map(
        (option): Pointer => ({
          path: [...path, 'when', feature],
          to: 'feature',
          id: `${formId} ${feature}: ${option}`,
        }),
      ),
    );
  return [
    ...alterations.map((id, index): Pointer => ({ path: ['alterations', index], to: 'alteration', id })),
    ...parts.map(
      (part, index): Pointer => ({ path: ['parts', index, 'kind'], to: 'part kind', id: part.kind }),
    ),
    ...parts.flatMap((part, index) => features(part.when, ['parts', index])),
    ...measures.flatMap((measure, index) => features(measure.when, ['measures', index])),
    ...drawing.flatMap((shape, index): Pointer[] => [
      { path: ['drawing', index, 'part'], to: 'part', id: `${formId} ${shape.part}` },
      ...features(shape.when, ['drawing', index]),
    ]),
  ];
}

function otherPointers(entry: Entry): Pointer[] {
  const [shop] = soundEntries([entry], 'shop');
  const [alteration] = soundEntries([entry], 'alteration');
  const [making] = soundEntries([entry], 'making');
  const [asked] = soundEntries([entry], 'ask');
  const [drawing] = soundEntries([entry], 'signDrawing');
  const [undrawn] = soundEntries([entry], 'notDrawn');
  const [measured] = soundEntries([entry], 'measurements');
  return [
    ...(measured === undefined ? [] : measuredPointers(measured.value)),
    ...(drawing?.value.signs ?? undrawn?.value.signs ?? []).map(
      (id, index): Pointer => ({ path: ['signs', index], to: 'sign', id }),
    ),
    ...(asked?.value.on ?? []).map((id, index): Pointer => ({ path: ['on', index], to: 'part kind', id })),
    ...(shop?.value.forms ?? []).map((id, index): Pointer => ({ path: ['forms', index], to: 'form', id })),
    ...(shop?.value.habits ?? []).flatMap((habit, index): Pointer[] => [
      { path: ['habits', index, 'sign'], to: 'sign', id: habit.sign },
      ...(habit.on ?? []).map(
        (id, place): Pointer => ({ path: ['habits', index, 'on', place], to: 'part kind', id }),
      ),
    ]),
    ...(alteration?.value.needsPart ?? []).map(
      (id, index): Pointer => ({ path: ['needsPart', index], to: 'part kind', id }),
    ),
    ...Object.keys(alteration?.value.changes ?? {}).map(
      (id): Pointer => ({ path: ['changes', id], to: 'part kind', id }),
    ),
    ...(making === undefined
      ? []
      : [{ path: ['defaultOdds'], to: 'starting odds', id: making.value.defaultOdds } as const]),
  ];
}

function measuredPointers(value: Measurements): Pointer[] {
  const { alteration } = value['seat-width'];
  return [...signsIn(value, []), { path: ['seat-width', 'alteration'], to: 'alteration', id: alteration }];
}

/** Signs that measurements speak of: each `sign`, and every list of texts but the kinds of mark. */
function signsIn(value: unknown, path: YamlPath): Pointer[] {
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, each]): Pointer[] => {
    const isListed = Array.isArray(value);
    const at = [...path, isListed ? Number(key) : key];
    if (typeof each === 'string')
      return isListed || key === 'sign' ? [{ path: at, to: 'sign', id: each }] : [];
    return key === 'kinds' ? [] : signsIn(each, at);
  });
}

/** The known id that shares most of its beginning and end, as a hint; nothing if none is near. */
function nearest(id: string, known: ReadonlySet<string>): string {
  const likeness = (other: string) => {
    let start = 0;
    while (start < id.length && id[start] === other[start]) start++;
    let end = 0;
    while (end < id.length - start && id.at(-1 - end) === other.at(-1 - end)) end++;
    return (start + end) / Math.max(id.length, other.length);
  };
  const best = [...known].sort((a, b) => likeness(b) - likeness(a))[0];
  return best !== undefined && likeness(best) >= 0.7 ? ` (perhaps ${best})` : '';
}
