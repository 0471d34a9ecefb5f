import { expect, test } from 'vitest';
import type { Form } from '../../knowledge/schema.ts';
import { featuresToAsk } from './featuresToAsk.ts';

const part = (kind: string, when: Record<string, string[]>) => ({
  id: kind,
  kind,
  name: kind,
  structural: true,
  renewed: { in100: '3, 1–6' },
  when,
});
const options = (...ids: string[]) => ids.map((id) => ({ id, name: id }));
const form = {
  features: [
    { id: 'back', name: 'Back', options: options('splat', 'ladder') },
    { id: 'splat', name: 'Splat', options: options('pierced', 'solid') },
  ],
  parts: [part('splat', { back: ['splat'] }), part('back-slat', { back: ['ladder'] })],
} as unknown as Form;

test('the kind of splat is asked of a splat back only', () => {
  expect(featuresToAsk(form, { back: 'splat' }).map((one) => one.id)).toEqual(['back', 'splat']);
  expect(featuresToAsk(form, { back: 'ladder' }).map((one) => one.id)).toEqual(['back']);
  expect(featuresToAsk(form, {}).map((one) => one.id)).toEqual(['back', 'splat']);
});
