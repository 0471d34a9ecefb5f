import { expect, test } from 'vitest';
import type { OpinionMaterial } from '../opinionMaterial.ts';
import { madeWithSection } from './madeWith.ts';

const printed = (knowledge: string) =>
  JSON.stringify(
    madeWithSection({
      piece: { id: 'one' },
      weighing: undefined,
      knowledge: { version: knowledge },
      madeOn: '2026-03-01',
      version: '0.0.0',
      issue: undefined,
    } as unknown as OpinionMaterial),
  );

test('an opinion weighed with figures that settled cases moved says so, and from how many', () => {
  expect(printed('a8db87db19f888e9-settled-12-2e13a655')).toContain(
    'The figures of the signs were moved by 12 settled cases of the examiner’s own',
  );
  expect(printed('a8db87db19f888e9')).not.toContain('settled case');
});
