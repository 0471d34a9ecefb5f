import { isSupport } from './verbalScale.ts';
import type { Weighing } from './weighing.ts';

type Weight = Weighing['weights'][number];
type InWhole = Pick<Weight, 'withinWhole' | 'againstRival' | 'words' | 'limit'>;

/**
 * What speaks for or against the leading reading: several findings of one cause taken together, one finding, or something of the
 * examiner’s own that no sign covers.
 */
export type Reason = InWhole & {
  /** What the findings have in common; nothing for a single finding. */
  cause: Weighing['reasonGroups'][number]['cause'] | undefined;
  /** The findings, the weightiest by itself first; none where an observation speaks. */
  findings: Weight[];
  /** The id of the examiner’s own observation that speaks, or `lookedOverId`. */
  own?: string;
};

/** The reasons on either side, the weightiest first, and those that stand on neither. */
export type Reasons = {
  forIt: Reason[];
  againstIt: Reason[];
  /** A hard limit leaves one side nothing: told in words, for there is no number. */
  limits: Reason[];
  /** Too little either way within the whole to be called support by the scale. */
  neither: Reason[];
};

/**
 * Why the leading reading leads: findings of one cause counted together, once, the others one by one, and the examiner’s own
 * observations.
 *
 * The order is that of what taking each out of the whole would change, for the leading reading against all the others.
 */
export function reasonsOf(weighing: Pick<Weighing, 'weights' | 'reasonGroups' | 'observations'>): Reasons {
  const grouped = new Set(weighing.reasonGroups.flatMap(({ findings }) => findings.map(keyOf)));
  const weightOf = new Map(weighing.weights.map((weight) => [keyOf(weight), weight]));
  const all: Reason[] = [
    ...weighing.reasonGroups.map(({ findings, ...rest }) => ({
      ...rest,
      findings: findings
        .flatMap((each) => weightOf.get(keyOf(each)) ?? [])
        .toSorted((a, b) => Math.abs(b.alone ?? Infinity) - Math.abs(a.alone ?? Infinity)),
    })),
    ...weighing.weights
      .filter((weight) => !grouped.has(keyOf(weight)))
      .map(({ withinWhole, againstRival, words, limit, ...rest }) => ({
        cause: undefined,
        findings: [{ ...rest, withinWhole, againstRival, words, ...(limit === undefined ? {} : { limit }) }],
        withinWhole,
        againstRival,
        words,
        ...(limit === undefined ? {} : { limit }),
      })),
    ...weighing.observations.map(({ id, ...rest }) => ({ ...rest, cause: undefined, findings: [], own: id })),
  ];
  const weighed = all
    .flatMap((reason) => (reason.withinWhole === null ? [] : [{ reason, size: reason.withinWhole }]))
    .toSorted((a, b) => Math.abs(b.size) - Math.abs(a.size));
  const those = (fits: (size: number) => boolean) =>
    weighed.filter(({ size }) => fits(size)).map(({ reason }) => reason);
  return {
    forIt: those((size) => isSupport(size) && size > 0),
    againstIt: those((size) => isSupport(size) && size < 0),
    limits: all.filter((reason) => reason.withinWhole === null),
    neither: those((size) => !isSupport(size)),
  };
}

/** A key by which a reason is told from the others of a weighing. */
export function reasonKey({ cause, findings, own }: Pick<Reason, 'cause' | 'findings' | 'own'>): string {
  if (own !== undefined) return `own ${own}`;
  return cause === undefined ? findings.map(keyOf).join() : `${cause.kind} ${cause.id}`;
}

function keyOf({ sign, part }: { sign: string; part: string | null }): string {
  return `${sign}@${part ?? ''}`;
}
