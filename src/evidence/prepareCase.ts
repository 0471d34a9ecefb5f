import { type Fault, refuse } from '../ground/fault.ts';
import { canApply, type KnownOfPiece } from '../knowledge/canApply.ts';
import { knownOfPiece } from '../knowledge/knownOfPiece.ts';
import type { Alteration, Form, FormPart, Knowledge, Shop, Sign } from '../knowledge/schema.ts';
import { findingKey, tellsOfPiece } from '../piece/finding.ts';
import { withAlike } from './alikeLooks.ts';
import type { CaseToWeigh } from './caseToWeigh.ts';
import { tellsOfChange } from './lookedOver.ts';
import { measuredLook } from './measuredLook.ts';
import type { Ignored, Look, ModelPart, PreparedCase } from './preparedCase.ts';
import { usualShare } from './signShares.ts';
import { type YearAxis, yearAxis } from './yearAxis.ts';

const wholePart: ModelPart = {
  id: 'whole',
  kind: 'whole',
  name: 'the piece as a whole',
  structural: false,
  renewed: undefined,
};

/**
 * Looks up everything a case names. Findings that cannot be weighed (an unknown sign, a part the piece does not have,
 * a sign a photograph cannot show) are kept aside with a reason, never dropped in silence.
 *
 * @param axis  the years the model runs over; 5-year bins from before the claimed style, but not before 1600, to now when
 *   left out: nothing of the kind can have been made earlier
 * @returns the prepared case, or the faults that leave nothing to weigh
 */
export function prepareCase(
  input: CaseToWeigh,
  knowledge: Knowledge,
  yearNow: number,
  axis?: YearAxis,
): { ok: true; prepared: PreparedCase } | { ok: false; faults: Fault[] } {
  const form = knowledge.forms[input.form];
  if (form === undefined) {
    const known = Object.keys(knowledge.forms).join(', ');
    return refuse(
      'evidence.unknown-form',
      `No form "${input.form}" is known; the forms are ${known}.`,
      'form',
    );
  }
  const odds = input.startingOdds ?? knowledge.making.defaultOdds;
  if (knowledge.making.startingOdds[odds] === undefined) {
    const known = Object.keys(knowledge.making.startingOdds).join(', ');
    return refuse(
      'evidence.unknown-odds',
      `No starting odds "${odds}" are known; choose one of ${known}.`,
      'startingOdds',
    );
  }
  const unknownShop = input.shops?.find((id) => knowledge.shops[id] === undefined);
  if (unknownShop !== undefined) {
    return refuse(
      'evidence.unknown-shop',
      `No shop file "${unknownShop}" is known; leave it out or add the file.`,
      'shops',
    );
  }
  const parts = modelParts(form, input);
  const span = input.claim?.period ?? form.styleSpan;
  if (span[1] < span[0]) {
    return refuse(
      'evidence.period-backwards',
      'The claimed period ends before it begins; write the earlier year first.',
      'claim.period',
    );
  }
  const alterations = form.alterations
    .flatMap((id) => knowledge.alterations[id] ?? [])
    .filter(({ needsPart }) => needsPart?.some((kind) => parts.some((part) => part.kind === kind)) ?? true);
  const known = knownOfPiece(input.features, input.parts);
  const { looks, ignored } = looksOf(input, knowledge, form, parts, alterations, known);
  const shops = fittingShops(input, knowledge, form, span);
  const observations = input.observations ?? [];
  const against = tellsOfChange({ looks, observations, alterations });
  return {
    ok: true,
    prepared: {
      knowledge,
      form,
      parts,
      alterations,
      shops,
      looks,
      ignored,
      observations,
      lookedOver: input.lookedOver === true && against.looks.length + against.observations.length === 0,
      span,
      place: input.claim?.place ?? '',
      odds,
      known,
      photoOnly: input.mode === 'photo-only',
      axis: axis ?? usualAxis(span[0] - knowledge.making.provincialLagYears, yearNow),
      yearNow,
    },
  };
}

function usualAxis(firstYear: number, yearNow: number): YearAxis {
  const from = Math.floor(Math.min(Math.max(1400, firstYear), yearNow) / 5) * 5;
  return yearAxis(from, yearNow, 5);
}

/** The parts this piece has: those its features call for, less the missing, plus any named in the case. */
function modelParts(form: Form, input: CaseToWeigh): ModelPart[] {
  const features = input.features ?? {};
  const named = new Set([
    ...(input.parts ?? []).map((part) => part.id),
    ...input.findings.flatMap((each) => each.part ?? []),
  ]);
  const missing = new Set((input.parts ?? []).filter((part) => part.missing === true).map((part) => part.id));
  const has = (part: FormPart) =>
    named.has(part.id) ||
    Object.entries(part.when).every(([feature, options]) =>
      options.includes(features[feature] ?? defaultOption(form, feature)),
    );
  const parts = form.parts.filter((part) => has(part) && !missing.has(part.id));
  return [
    wholePart,
    ...parts.map(({ id, kind, name, structural, renewed }) => ({ id, kind, name, structural, renewed })),
  ];
}

function defaultOption(form: Form, feature: string): string {
  return form.features.find((each) => each.id === feature)?.options[0]?.id ?? '';
}

function looksOf(
  input: CaseToWeigh,
  knowledge: Knowledge,
  form: Form,
  parts: ModelPart[],
  alterations: Alteration[],
  known: KnownOfPiece,
) {
  const looks = new Map<string, Look>();
  const ignored: Ignored[] = [];
  for (const each of input.findings) {
    const aside = (why: string) => ignored.push({ sign: each.sign, part: each.part ?? null, why });
    const sign = knowledge.signs[each.sign];
    if (sign === undefined) {
      aside('No sign of this name is in the knowledge files; it is kept but carries no weight.');
      continue;
    }
    const part = partFor(sign, each.part, parts);
    if (part === undefined) {
      aside('The piece has no such part, so nothing can be weighed on it.');
      continue;
    }
    if (
      sign.hangsOn.startsWith('alteration/') &&
      !alterations.some((one) => `alteration/${one.id}` === sign.hangsOn)
    ) {
      aside('This form is not prone to the alteration this sign tells of.');
      continue;
    }
    const inPhoto = input.mode === 'photo-only' || each.inPhotoOnly === true;
    if (inPhoto && sign.inPhoto === 'no') {
      aside('A photograph cannot show this sign; look for it in the hand.');
      continue;
    }
    if (!tellsOfPiece(each.state)) continue;
    if (each.state === 'absent' && !canApply(sign, part, form, known)) {
      aside('It can’t be on this part as it is made, so that its absence says nothing.');
      continue;
    }
    const key = findingKey(each.sign, part.id === 'whole' ? undefined : part.id);
    if (each.likelihoods !== undefined) {
      const measured = measuredLook(key, sign, part.id, each.likelihoods);
      if (typeof measured === 'string') aside(measured);
      else looks.set(key, measured);
      continue;
    }
    // A photograph gives hints at best, however plain the thing looks in it.
    looks.set(key, {
      key,
      sign,
      part: part.id,
      state: each.state,
      sure: inPhoto ? 'hint' : (each.sure ?? 'plain'),
      usual: usualShare(sign),
    });
  }
  return { looks: withAlike([...looks.values()]), ignored };
}

/** The part a finding is of: the one named, else the piece as a whole if the sign can be on it, else the first it can be on. */
function partFor(sign: Sign, part: string | undefined, parts: ModelPart[]): ModelPart | undefined {
  if (part !== undefined) return parts.find((each) => each.id === part);
  return sign.on.includes('whole') ? parts[0] : parts.find((each) => sign.on.includes(each.kind));
}

/** The shop files that fit form and years, or those the case names. */
function fittingShops(
  input: CaseToWeigh,
  knowledge: Knowledge,
  form: Form,
  span: readonly [number, number],
): Shop[] {
  const lag = knowledge.making.provincialLagYears;
  return Object.values(knowledge.shops).filter(
    (shop) =>
      shop.forms.includes(form.id) &&
      shop.years[0] <= span[1] + lag &&
      shop.years[1] >= span[0] - lag &&
      (input.shops === undefined || input.shops.includes(shop.id)),
  );
}
