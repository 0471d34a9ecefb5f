import type { CaseToWeigh } from '../src/evidence/caseToWeigh.ts';
import { seededRandom } from '../src/ground/seededRandom.ts';
import { askedOf } from '../src/knowledge/askedOf.ts';
import { type Knowledge, shop } from '../src/knowledge/schema.ts';

/** How a case of the benchmark is drawn. */
export type Drawn = {
  form: string;
  findings: number;
  seed: number;
  /** Findings lie on so many parts at most, taken in the form's order; on all when left out. */
  parts?: number;
  claim?: CaseToWeigh['claim'];
};

/** A piece with so many findings, drawn with a seed from the signs its parts can show. */
export function drawnCase(
  knowledge: Knowledge,
  { form: id, findings: wanted, seed, parts: most, claim }: Drawn,
): CaseToWeigh {
  const form = knowledge.forms[id];
  if (form === undefined) throw new Error(`the knowledge has no ${id}`);
  const random = seededRandom(seed);
  const parts = form.parts
    .filter((part) =>
      Object.entries(part.when).every(([feature, options]) =>
        options.includes(form.features.find((each) => each.id === feature)?.options[0]?.id ?? ''),
      ),
    )
    .slice(0, most);
  const places = Object.values(knowledge.signs).flatMap((sign) => [
    ...(askedOf(sign, 'whole', form) ? [{ sign: sign.id }] : []),
    ...parts
      .filter((part) => askedOf(sign, part.kind, form))
      .map((part) => ({ sign: sign.id, part: part.id })),
  ]);
  const findings: CaseToWeigh['findings'] = [];
  while (findings.length < wanted && places.length > 0) {
    const [place] = places.splice(Math.floor(random() * places.length), 1);
    if (place !== undefined)
      findings.push({
        ...place,
        state: random() < 0.4 ? 'present' : 'absent',
        sure: random() < 0.7 ? 'plain' : 'fairly',
      });
  }
  return { form: id, mode: 'in-hand', ...(claim === undefined ? {} : { claim }), findings };
}

/**
 * The knowledge with so many shops that can have made a form: those it has, and invented ones beside them where it has too
 * few, each with six habits drawn with a seed from the signs of the maker's habit on that form.
 */
export function withShops(knowledge: Knowledge, formId: string, wanted: number, seed: number): Knowledge {
  const form = knowledge.forms[formId];
  if (form === undefined) throw new Error(`the knowledge has no ${formId}`);
  const random = seededRandom(seed);
  const kinds = new Set(form.parts.map((part) => part.kind));
  const signs = Object.values(knowledge.signs).filter(
    (sign) => sign.hangsOn === 'making' && sign.on.some((kind) => kinds.has(kind)),
  );
  const fitting = Object.values(knowledge.shops).filter((each) => each.forms.includes(formId));
  const invented = Array.from({ length: Math.max(0, wanted - fitting.length) }, (_, index) => {
    const from = form.styleSpan[0] + Math.floor(random() * 20);
    const pool = [...signs];
    const habits = Array.from({ length: Math.min(6, pool.length) }, () => {
      const [sign] = pool.splice(Math.floor(random() * pool.length), 1);
      return { sign: sign?.id ?? '', shows: random() < 0.5 ? '90, 80–96' : '4, 1–10' };
    });
    return shop.parse({
      id: `invented-for-the-bench-${index + 1}`,
      name: `Invented for the bench, ${index + 1}`,
      kind: 'workshop',
      invented: true,
      place: 'Nowhere',
      years: [from, from + 15 + Math.floor(random() * 30)],
      forms: [formId],
      share: '3, 1–6',
      what: 'Invented, so that a benchmark has shops enough.',
      habits,
      basis: { by: 'judgement', why: 'Invented for a benchmark.' },
    });
  });
  const kept = Object.values(knowledge.shops).filter(
    (each) => !each.forms.includes(formId) || fitting.indexOf(each) < wanted,
  );
  return { ...knowledge, shops: Object.fromEntries([...kept, ...invented].map((each) => [each.id, each])) };
}

/** The case that the aims are set for: a sideboard, 150 findings on 15 of its parts. */
export function sideboardCase(knowledge: Knowledge, findings = 150, parts = 15): CaseToWeigh {
  return drawnCase(knowledge, { form: 'sideboard', findings, seed: 7, parts });
}
