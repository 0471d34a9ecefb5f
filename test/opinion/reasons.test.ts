import { beforeAll, expect, it } from 'vitest';
import type { CaseToWeigh } from '../../src/evidence/caseToWeigh.ts';
import type { Knowledge } from '../../src/knowledge/schema.ts';
import type { OpinionDocument } from '../../src/opinion/opinionDocument.ts';
import { findingKey } from '../../src/piece/finding.ts';
import { reasonsOf } from '../../src/weighing/reasons.ts';
import { weighCase } from '../../src/weighing/weighCase.ts';
import type { Weighing } from '../../src/weighing/weighing.ts';
import { houseKnowledge } from '../kits/houseKnowledge.ts';
import { emptyPiece, opinionMaker, textsOf } from '../kits/opinions.ts';

/** A desk and bookcase whose halves did not begin together, each half sound old work: invented. */
const marriage = [
  'halves-aged-apart',
  'halves-backboards-differ',
  'halves-dovetails-differ',
  'halves-drawers-differ',
  'halves-wood-or-finish-differ',
];
const period = [
  ['jack-plane-tracks', 'backboard'],
  ['bare-wood-darkened', 'bottom-board'],
  ['jack-plane-tracks', 'upper-bottom-board'],
] as const;
const known: { knowledge: Knowledge; weighing: Weighing; opinion: OpinionDocument } = {} as never;

beforeAll(async () => {
  const knowledge = await houseKnowledge();
  const findings: CaseToWeigh['findings'] = [
    ...marriage.map((sign) => ({ sign, part: 'whole', state: 'present' as const })),
    ...period.map(([sign, part]) => ({ sign, part, state: 'present' as const })),
  ];
  const result = weighCase({ form: 'desk-and-bookcase', mode: 'in-hand', quick: true, findings }, knowledge, {
    yearNow: 2026,
  });
  if (!result.ok) throw new Error(result.faults[0]?.message);
  const of = emptyPiece({
    form: 'desk-and-bookcase',
    findings: Object.fromEntries(
      findings.map((each) => {
        const id = findingKey(each.sign, each.part);
        return [id, { id, ...each, sure: 'plain', inPhotoOnly: false, words: '', photos: [] }];
      }),
    ) as never,
  });
  Object.assign(known, { knowledge, weighing: result.output, opinion: opinionMaker(knowledge)(of) });
}, 120_000);

it('leads with the five marriage signs together where the halves did not begin together', () => {
  const { forIt } = reasonsOf(known.weighing);
  expect(forIt[0]?.cause).toMatchObject({ kind: 'alteration', id: 'upper-and-lower-married' });
  expect(forIt[0]?.findings.map(({ sign }) => sign).toSorted()).toEqual(marriage);
});

it('prints them so: the cause with what they do together, then each finding', () => {
  const section = known.opinion.sections.find(({ id }) => id === 'weights');
  const texts = section === undefined ? [] : textsOf(section);
  const name = known.knowledge.alterations['upper-and-lower-married']?.name;
  expect(texts.join('')).toContain(`${name}: 5 findings together`);
  const rows = known.knowledge.signs['halves-aged-apart']?.name ?? '?';
  expect(texts.join('').indexOf(rows)).toBeGreaterThan(texts.join('').indexOf('5 findings together'));
  expect(texts.join('')).not.toMatch(/[−+]1[12]\d\b/);
});
