import { type Entry, soundEntries } from './entry.ts';
import type { Figure } from './figureSchema.ts';
import { type Judged, pooledFigure } from './pooledFigure.ts';
import type { Alteration, Form, Making, Shop, Sign } from './schema.ts';

type Tables<SignOf extends Sign, ShopOf extends Shop> = {
  signs: SignOf[];
  alterations: Alteration[];
  forms: Form[];
  shops: ShopOf[];
  making: Making;
};

/**
 * The tables with what judges who were asked apart said taken into the shares of signs and habits, of the parts that an
 * alteration changes, and of what stands in making.yaml.
 *
 * How often a thing is done at all (alterations, renewals of parts, work of one shop) keeps the figure of the file, with what the others said beside it:
 * such rates must be right together, and judged one by one they add up to more than whole pieces bear out (docs/knowledge.md). So does
 * what is marked `aside`. A share that a published work prints stays as it is printed.
 */
export function poolJudged<SignOf extends Sign, ShopOf extends Shop>(
  tables: Tables<SignOf, ShopOf>,
  entries: readonly Entry[],
): Tables<SignOf, ShopOf> {
  const { signs, alterations, forms, shops, making } = tables;
  const how = making.pooling;
  if (how === undefined) return tables;
  const bySign = valuesById(soundEntries(entries, 'judgedSign'));
  const byAlteration = valuesById(soundEntries(entries, 'judgedAlteration'));
  const byKind = valuesById(soundEntries(entries, 'judgedRenewal'));
  const byShop = valuesById(soundEntries(entries, 'judgedShop'));
  const pooled = <Kind extends Figure>(figure: Kind, judged: Judged | undefined, basis: Word): Kind =>
    judged === undefined || isPrinted(figure, basis)
      ? figure
      : { ...figure, ...pooledFigure(figure, judged, how) };
  const each = <Kind extends Figure>(
    figures: Record<string, Kind>,
    judged: Record<string, Judged> | undefined,
    basis: Word,
  ) => mapValues(figures, (one, key) => pooled(one, judged?.[key], basis));
  return {
    signs: signs.map((sign) => ({
      ...sign,
      shows: bySign.get(sign.id)?.aside
        ? mapValues(sign.shows, (figure, state) => withAside(figure, bySign.get(sign.id)?.shows[state]))
        : each(sign.shows, bySign.get(sign.id)?.shows, sign.basis),
      ...(sign.campaign === undefined
        ? {}
        : {
            campaign: {
              ...sign.campaign,
              shows: pooled(sign.campaign.shows, bySign.get(sign.id)?.campaign, sign.basis),
            },
          }),
    })),
    alterations: alterations.map((alteration) => {
      const { happened, changes } = byAlteration.get(alteration.id) ?? {};
      return {
        ...alteration,
        happened: {
          ...alteration.happened,
          period: withAside(alteration.happened.period, happened?.period),
          later: withAside(alteration.happened.later, happened?.later),
        },
        changes: each(alteration.changes, changes, alteration.basis),
      };
    }),
    forms: forms.map((form) => ({
      ...form,
      parts: form.parts.map((part) => ({
        ...part,
        renewed: withAside(part.renewed, byKind.get(part.kind)?.renewed[form.family]),
      })),
    })),
    shops: shops.map((shop) => ({
      ...shop,
      share: withAside(shop.share, byShop.get(shop.id)?.share),
      habits: shop.habits.map((habit) => ({
        ...habit,
        shows: pooled(habit.shows, byShop.get(shop.id)?.habits[habit.sign], shop.basis),
      })),
    })),
    making: soundEntries(entries, 'judgedMaking').reduce(
      (whole, { value: { id, aside, figures } }) =>
        Object.entries(figures).reduce(
          (before, [way, judged]) =>
            withFigureAt(before, [id, ...way.split('/').filter((step) => step !== '')], (figure) =>
              aside ? withAside(figure, judged) : pooled(figure, judged, making.basis),
            ),
          whole,
        ),
      making,
    ),
  };
}

/** The same tree with the figure at the end of a way changed; as it is where the way leads to no figure. */
function withFigureAt<Tree extends object>(
  tree: Tree,
  way: readonly string[],
  to: (figure: Figure) => Figure,
): Tree {
  const [step, ...rest] = way;
  if (step === undefined) return 'in100' in tree ? { ...tree, ...to(tree as unknown as Figure) } : tree;
  const inner = (tree as Record<string, unknown>)[step];
  if (typeof inner !== 'object' || inner === null) return tree;
  return { ...tree, [step]: withFigureAt(inner, rest, to) };
}

function withAside(figure: Figure, judged: Judged | undefined): Figure {
  return judged === undefined ? figure : { ...figure, aside: Object.values(judged) };
}

function mapValues<Value>(
  record: Record<string, Value>,
  to: (value: Value, key: string) => Value,
): Record<string, Value> {
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key, to(value, key)]));
}

type Word = { source?: string | undefined; by?: string | undefined } | undefined;

/** A work prints the share itself: a source stands there and no one's judgment beside it. */
function isPrinted(figure: Figure, basis: Word): boolean {
  const word = figure.source !== undefined || figure.by !== undefined ? figure : basis;
  return word?.source !== undefined && word.by === undefined;
}

function valuesById<Value extends { id: string }>(entries: readonly { value: Value }[]): Map<string, Value> {
  return new Map(entries.map(({ value }) => [value.id, value]));
}
