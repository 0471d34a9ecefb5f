import { describe, expect, it } from 'vitest';
import { letterOfAsks } from './letterOfAsks.ts';

const under = {
  id: 'underside',
  kind: 'photograph' as const,
  name: 'The underside',
  ask: 'The underside, whole.',
  caution: 'Turn it over with a second pair of hands.',
  shows: [],
};
const story = { id: 'story', kind: 'answer' as const, name: 'Story', ask: 'Who has owned it.', shows: [] };

describe('the letter that asks for photographs', () => {
  it('numbers pictures and answers in one run, with the caution beside its step', () => {
    const letter = letterOfAsks('the armchair', [story, under]);
    expect(letter).toContain('To say more about the armchair');
    expect(letter).toContain('1. The underside, whole. (Turn it over with a second pair of hands.)');
    expect(letter).toContain('2. Who has owned it.');
    expect(letter.indexOf('1.')).toBeLessThan(letter.indexOf('2.'));
  });

  it('leaves out what is not asked for', () => {
    expect(letterOfAsks('the armchair', [story])).not.toContain('camera');
    expect(letterOfAsks('the armchair', [under])).not.toContain('tell me');
  });
});
