import { describe, expect, it } from 'vitest';
import { sign } from '../../knowledge/schema.ts';
import { hasWords, howFarLooked, signsOnPart } from './signsOnPart.ts';

const plain = (id: string, name: string, on: string[]) => ({
  ...sign.parse({ id, name, look: 'Rake a light along it.', on, hangsOn: 'tooling', minutes: 1, shows: {} }),
  family: 'saw-marks',
});
const knowledge = {
  families: [
    { id: 'saw-marks', name: 'Saw marks', signs: ['arcs', 'straight-lines'] },
    { id: 'whole-piece', name: 'The whole', signs: ['too-small'] },
  ],
  signs: {
    arcs: plain('arcs', 'Arcs of a circular saw', ['splat', 'front-rail']),
    'straight-lines': plain('straight-lines', 'Straight saw lines', ['splat']),
    'too-small': plain('too-small', 'Too small', ['whole']),
  },
};
const found = {
  'arcs@splat': {
    id: 'arcs@splat',
    sign: 'arcs',
    part: 'splat',
    state: 'absent',
    sure: 'plain',
    inPhotoOnly: false,
    words: '',
    photos: [],
  },
} as const;
const findings = { 'arcs@splat': { ...found['arcs@splat'], photos: [] } };

describe('signs on a part', () => {
  it('offers only signs that can be on the kind, by family', () => {
    expect(
      signsOnPart(knowledge, findings, 'splat', 'splat').map((f) => f.offered.map((o) => o.key)),
    ).toEqual([['arcs@splat', 'straight-lines@splat']]);
    expect(signsOnPart(knowledge, findings, 'whole', undefined)[0]?.offered[0]?.key).toBe('too-small');
  });

  it('sifts by whether it was looked for', () => {
    expect(
      signsOnPart(knowledge, findings, 'splat', 'splat', 'not-yet')[0]?.offered.map((o) => o.sign.id),
    ).toEqual(['straight-lines']);
    expect(
      signsOnPart(knowledge, findings, 'splat', 'splat', 'answered')[0]?.offered.map((o) => o.sign.id),
    ).toEqual(['arcs']);
    expect(howFarLooked(signsOnPart(knowledge, findings, 'splat', 'splat'))).toEqual({ looked: 1, of: 2 });
  });

  it('leaves out what is not asked of the form, but never what was answered', () => {
    const narrow = { ...knowledge.signs.arcs, formFamilies: ['seating' as const] };
    const narrowed = { ...knowledge, signs: { ...knowledge.signs, arcs: narrow } };
    const ids = (answered: typeof findings | object, family: 'case' | 'seating') =>
      signsOnPart(
        narrowed,
        { ...answered },
        'splat',
        'splat',
        'all',
        '',
        {},
        { id: 'any-form', family, alterations: [], features: [] },
      ).flatMap((each) => each.offered.map((one) => one.sign.id));
    expect(ids({}, 'case')).toEqual(['straight-lines']);
    expect(ids({}, 'seating')).toEqual(['arcs', 'straight-lines']);
    expect(ids(findings, 'case')).toEqual(['arcs', 'straight-lines']);
  });

  it('finds by words in any order and case, in name or look', () => {
    const arcs = knowledge.signs.arcs;
    expect(hasWords(arcs, 'SAW arcs')).toBe(true);
    expect(hasWords(arcs, 'rake')).toBe(true);
    expect(hasWords(arcs, 'dowel')).toBe(false);
    expect(hasWords(arcs, '  ')).toBe(true);
  });
});
