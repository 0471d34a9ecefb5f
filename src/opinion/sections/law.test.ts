import { expect, it } from 'vitest';
import { piecePart } from '../../piece/piece.ts';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { lawSection } from './cautions.ts';

function law(...parts: { id: string; woods?: string[]; words?: string }[]) {
  const read = Object.fromEntries(parts.map((part) => [part.id, piecePart.parse(part)]));
  const piece = { engagement: {}, parts: read } as unknown as OpinionMaterial['piece'];
  return JSON.stringify(lawSection({ piece } as OpinionMaterial));
}

it('reminds of the law on a material that was entered of a part, and of none that was not', () => {
  const plain = law({ id: 'top', woods: ['mahogany'] });
  expect(plain).not.toContain('Ivory Act 2018');
  expect(plain).not.toContain('Dalbergia');
  expect(law({ id: 'top', woods: ['Brazilian rosewood'] })).toContain('June 11, 1992');
  const ivory = law({ id: 'escutcheons', words: 'Of ivory, one lost.' });
  expect(ivory).toContain('are taken for ivory');
});

it('prints no rule on a material that was read in part only', () => {
  const printed = law({ id: 'escutcheons', words: 'Of ivory.' }, { id: 'top', woods: ['rosewood'] });
  for (const unread of ['50 CFR 17.40(e)', 'Ivory Act 2018', 'since 2017'])
    expect(printed).not.toContain(unread);
});
