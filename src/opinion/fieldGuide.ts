import { drawForm } from '../drawing/drawForm.ts';
import { drawingSvg } from '../drawing/drawingSvg.ts';
import { featuresOf, partsOf } from '../drawing/partsOf.ts';
import { sidesUnderAll } from '../drawing/sides.ts';
import { capital, listed } from '../ground/words.ts';
import { askedOf } from '../knowledge/askedOf.ts';
import { idWords } from '../knowledge/idWords.ts';
import { inSentence } from '../knowledge/inSentence.ts';
import type { Form, Knowledge, Sign } from '../knowledge/schema.ts';
import { citedBy } from './citedBy.ts';
import { citeFull, sortKey } from './citeWork.ts';
import { entryOfGuide, type GuideEntry } from './fieldGuideEntry.ts';
import type { Words } from './opinionDocument.ts';

/** What a guide is made of: every sign that can be on a piece of a form, or every sign of one family. */
export type GuideOf = { form: string } | { family: string };

/** A printed guide as data. */
export type FieldGuide = {
  title: string;
  under: string;
  /** `12 of them your own additions`, or nothing. */
  ofYourOwn: string;
  cautions: string[];
  /** The views at one scale, in rows that fit the page. */
  views: { svg: string; alternative: string; caption: string; widthMm: number; heightMm: number }[][];
  /** Whose left and right are meant, where views are printed. */
  sides: string;
  /** Which signs, by their numbers, are looked for on each part of the form; nothing for a family. */
  byPart: { part: string; numbers: number[] }[];
  stages: { title: string; groups: { name: string; entries: GuideEntry[] }[] }[];
  works: { number: number; words: Words }[];
  /** Of which knowledge it was printed. */
  version: string;
};

type KnownSign = Knowledge['signs'][string];

/** The order in which a piece is gone over: first what disturbs it least. */
const stages: readonly (readonly [Sign['needs'], string])[] = [
  ['nothing', 'As it stands'],
  ['turned-over', 'Turned over'],
  ['seat-lifted', 'With the seat lifted out'],
  ['part-removed', 'With a part taken off, by the owner’s leave'],
  ['owners-leave', 'With the owner’s leave'],
  ['laboratory', 'In a laboratory, from a sample taken with the owner’s leave'],
];

/** A sign on more kinds of part than this stands under a heading of its own, not under the first of them. */
const mostKinds = 4;

/**
 * A guide to carry: cautions first, the drawing and the parts, then what to look for in the order in which a piece is
 * gone over, and the works at the end. Every sign is printed once, with a number by which the list of parts points to it.
 *
 * @returns undefined where there is no such form or family
 */
export function fieldGuide(of: GuideOf, knowledge: Knowledge): FieldGuide | undefined {
  const form = 'form' in of ? knowledge.forms[of.form] : undefined;
  const family = 'family' in of ? knowledge.families.find((one) => one.id === of.family) : undefined;
  if (form === undefined && family === undefined) return undefined;
  const kinds = form === undefined ? undefined : ['whole', ...new Set(form.parts.map((part) => part.kind))];
  const signs =
    form === undefined
      ? (family?.signs ?? []).flatMap((id) => knowledge.signs[id] ?? [])
      : Object.values(knowledge.signs).filter((sign) => kinds?.some((kind) => askedOf(sign, kind, form)));
  const ordered = stages.flatMap(([need, title]) => {
    const groups = groupsOf(
      signs.filter((sign) => sign.needs === need),
      kinds,
    );
    return groups.length === 0 ? [] : [{ title, groups }];
  });
  const numberOf = new Map(
    ordered
      .flatMap(({ groups }) => groups.flatMap((group) => group.signs))
      .map((sign, at) => [sign.id, at + 1]),
  );
  const works = worksOf(signs, knowledge);
  const own = signs.filter((sign) => sign.mine === true).length;
  return {
    title: form?.name ?? family?.name ?? '',
    under: form?.what ?? 'Every sign of this family.',
    ofYourOwn:
      own === 0
        ? ''
        : `${own === 1 ? 'One of the signs is' : `${own} of the signs are`} your own, and marked so where it stands.`,
    cautions: cautionsOf(form, signs),
    views: form === undefined ? [] : viewsOf(form),
    sides:
      form === undefined
        ? ''
        : sidesUnderAll(
            drawForm(form, featuresOf(form, {}), {}).views.map(({ view }) => view),
            form.sides,
          ),
    byPart: form === undefined ? [] : byPart(form, signs, numberOf),
    stages: ordered.map(({ title, groups }) => ({
      title,
      groups: groups.map(({ name, signs: some }) => ({
        name,
        entries: some.map((sign) =>
          entryOfGuide(sign, {
            knowledge,
            number: numberOf.get(sign.id) ?? 0,
            numberOf,
            workNumbers: works.numbers,
            on: onWords(
              sign.on.filter((kind) => kinds === undefined || kinds.includes(kind)),
              form !== undefined,
            ),
          }),
        ),
      })),
    })),
    works: works.list,
    version: knowledge.version,
  };
}

function byPart(
  form: Form,
  signs: readonly KnownSign[],
  numberOf: ReadonlyMap<string, number>,
): FieldGuide['byPart'] {
  const kinds = ['whole', ...new Set(form.parts.map((part) => part.kind))];
  return kinds.flatMap((kind) => {
    const numbers = signs
      .filter((sign) => askedOf(sign, kind, form))
      .flatMap((sign) => numberOf.get(sign.id) ?? [])
      .toSorted((a, b) => a - b);
    return numbers.length === 0 ? [] : [{ part: capital(kindName(kind)), numbers }];
  });
}

/** The parts a sign can be on; of many the first, for in a form's guide the list of parts has them all. */
function onWords(kinds: readonly string[], listedBefore: boolean): string {
  const most = listedBefore ? mostKinds : 8;
  if (kinds.length <= most + 1) return listed(kinds.map(kindName));
  const named = kinds.slice(0, most).map(kindName).join(', ');
  return `${named} and ${kinds.length - most} more${listedBefore ? ' (see the list of parts)' : ''}`;
}

/** A kind of part, in words. */
function kindName(kind: string): string {
  return kind === 'whole' ? 'the piece as a whole' : idWords(kind);
}

function groupsOf(signs: readonly KnownSign[], kinds: readonly string[] | undefined) {
  const nameOf = (sign: KnownSign) => {
    const on = sign.on.filter((kind) => kinds === undefined || kinds.includes(kind));
    if (on.length > mostKinds) return 'On many parts';
    const first = kinds === undefined ? on[0] : kinds.find((kind) => on.includes(kind));
    return capital(kindName(first ?? 'whole'));
  };
  const groups = new Map<string, KnownSign[]>();
  for (const sign of signs) groups.set(nameOf(sign), [...(groups.get(nameOf(sign)) ?? []), sign]);
  const order = (name: string) =>
    name === 'On many parts' ? -1 : (kinds ?? []).findIndex((kind) => capital(kindName(kind)) === name);
  return [...groups]
    .map(([name, some]) => ({ name, signs: some }))
    .toSorted((a, b) => order(a.name) - order(b.name));
}

/** The form's cautions, and those of its signs that the form does not give already. */
function cautionsOf(form: Form | undefined, signs: readonly KnownSign[]): string[] {
  return [
    ...new Set([
      ...(form?.cautions ?? []),
      ...(form === undefined ? signs.flatMap((sign) => sign.caution ?? []) : []),
    ]),
  ];
}

/** Views in one row of a page, and the room for them in millimetres: between two there is some more. */
const inRow = 3;
const roomMm = { wide: 108, high: 58 };

function viewsOf(form: Form): FieldGuide['views'] {
  const features = featuresOf(form, {});
  const names = Object.fromEntries(partsOf(form, features).map((part) => [part.id, part.name]));
  const { views } = drawForm(form, features, {});
  const rows = [views.slice(0, inRow), views.slice(inRow)].filter((row) => row.length > 0);
  const scale = Math.min(
    ...rows.map((row) => roomMm.wide / row.reduce((sum, { box }) => sum + box[2], 0)),
    roomMm.high / Math.max(...views.map(({ box }) => box[3])),
  );
  return rows.map((row) =>
    row.map((view) => {
      const shown = [...new Set(view.shapes.map(({ part }) => names[part] ?? part))];
      const alternative = `Line drawing of a ${inSentence(form.name)}, ${inSentence(view.name)}. It shows ${listed(shown)}.`;
      const svg = drawingSvg(view, { names, title: view.name, description: alternative, legend: false });
      const [, , wide, high] = view.box;
      return { svg, alternative, caption: view.name, widthMm: wide * scale, heightMm: high * scale };
    }),
  );
}

function worksOf(signs: readonly KnownSign[], { sources }: Knowledge) {
  const cited = new Set(signs.flatMap(citedBy));
  const known = [...cited]
    .flatMap((id) => sources[id] ?? [])
    .toSorted((a, b) => (sortKey(a) < sortKey(b) ? -1 : 1));
  return {
    numbers: new Map(known.map((work, at) => [work.id, at + 1])),
    list: known.map((work, at) => ({ number: at + 1, words: citeFull(work) })),
  };
}
