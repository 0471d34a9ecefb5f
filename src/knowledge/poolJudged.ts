import { type Entry, soundEntries } from './entry.ts';
import type { Figure } from './figureSchema.ts';
import type { Pooling } from './judgedSchema.ts';
import { type Judged, pooledFigure } from './pooledFigure.ts';
import type { Alteration, Form, Sign } from './schema.ts';

type Tables<SignOf extends Sign> = { signs: SignOf[]; alterations: Alteration[]; forms: Form[] };

/**
 * The tables with what judges who were asked apart said taken into the shares of signs and of the parts that an alteration changes.
 *
 * How often a thing is done at all (alterations, renewals of parts) keeps the figure of the file, with what the others said beside it:
 * such rates must be right together, and judged one by one they add up to more than whole pieces bear out (docs/knowledge.md). So does a
 * sign whose judgments are marked `aside`. A share that a published work prints stays as it is printed.
 */
export function poolJudged<SignOf extends Sign>(
  { signs, alterations, forms }: Tables<SignOf>,
  entries: readonly Entry[],
  how: Pooling | undefined,
): Tables<SignOf> {
  if (how === undefined) return { signs, alterations, forms };
  const bySign = valuesById(soundEntries(entries, 'judgedSign'));
  const byAlteration = valuesById(soundEntries(entries, 'judgedAlteration'));
  const byKind = valuesById(soundEntries(entries, 'judgedRenewal'));
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
  };
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
