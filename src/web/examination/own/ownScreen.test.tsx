import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it } from 'vitest';
import { expectedAtFirst } from '../../../piece/observationWords.ts';
import { ExpectedGrid } from './ExpectedGrid.tsx';
import { capWords } from './OwnObservations.tsx';

it('asks for six kinds of piece in five words each, never in numbers, with the chosen word marked', () => {
  const html = renderToStaticMarkup(
    <ExpectedGrid expected={{ ...expectedAtFirst, copied: 'nearly always' }} onChange={() => undefined} />,
  );
  expect(html.match(/role="radiogroup"/g)).toHaveLength(6);
  expect(html.match(/type="radio"/g)).toHaveLength(30);
  expect([...html.matchAll(/checked=""\/><span>([^<]*)</g)].map(([, word]) => word)).toEqual([
    'sometimes',
    'sometimes',
    'sometimes',
    'sometimes',
    'nearly always',
    'sometimes',
  ]);
  expect(html.replaceAll(/<[^>]*>/g, ' ')).not.toMatch(/\d/);
});

it('says that it weighs nothing while all six words are the same, and only then', () => {
  const words = (copied: 'sometimes' | 'often') =>
    renderToStaticMarkup(
      <ExpectedGrid expected={{ ...expectedAtFirst, copied }} onChange={() => undefined} />,
    );
  expect(words('sometimes')).toContain('it weighs nothing');
  expect(words('often')).not.toContain('it weighs nothing');
  expect(words('often')).toContain('Often if a later copy');
});

it('says how far it can count', () => {
  expect(capWords).toContain('at most 10 to 1');
});
