import { expect, test } from 'vitest';
import { soundKnowledge } from '../../test/architecture/soundKnowledge.ts';
import { compileKnowledge } from './compileKnowledge.ts';
import { whyNotDrawn } from './whyNotDrawn.ts';

test('a sign without a drawing says why; a drawn one, and one nobody listed, say nothing', () => {
  const { knowledge = {} } = compileKnowledge(soundKnowledge);
  expect(whyNotDrawn('leg-square', knowledge)).toBe('Fingers tell it.');
  expect(whyNotDrawn('saw-arcs', knowledge)).toBeUndefined();
  expect(whyNotDrawn('my-own-sign', knowledge)).toBeUndefined();
});
