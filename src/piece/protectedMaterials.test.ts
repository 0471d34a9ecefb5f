import { expect, it } from 'vitest';
import { materialSentences, materialsNamed, protectedMaterials } from './protectedMaterials.ts';

const named = (...words: string[]) => materialsNamed(words).map(({ id }) => id);

it('knows a protected material by the names it is written by', () => {
  expect(named('escutcheons of ivory')).toEqual(['ivory']);
  expect(named('Brazilian rosewood veneer')).toEqual(['brazilian-rosewood']);
  expect(named('Rosewood', 'kingwood banding')).toEqual(['rosewood']);
  expect(named('Dalbergia nigra')).toEqual(['brazilian-rosewood']);
  expect(named('red tortoise shell', 'a whalebone inlay')).toEqual(['tortoiseshell', 'whalebone']);
});

it('takes no other thing for one', () => {
  expect(
    named(
      'vegetable ivory',
      'ivory white paint',
      'ivory-colored ground',
      'tulip poplar',
      'mahogany',
      'blackened wood',
    ),
  ).toEqual([]);
});

it('says of ivory what the acts of both countries ask', () => {
  // 50 CFR 17.40(e) and Director’s Order 210, read in part; Ivory Act 2018, sections 2 and 7, by the guidance of July 2023.
  const said = materialSentences(protectedMaterials[0] as (typeof protectedMaterials)[number]).join(' ');
  for (const asked of ['July 6, 2016', '200 grams', 'March 3, 1947', 'less than 10 percent', 'before 1918'])
    expect(said).toContain(asked);
});

it('says of every rule how far it was read and where to check it', () => {
  for (const material of protectedMaterials)
    for (const [index, sentence] of materialSentences(material).entries()) {
      const { read, check } = material.reminders[index] as (typeof material.reminders)[number];
      expect(sentence.endsWith(`Check: ${check}.`)).toBe(true);
      expect(sentence.toLowerCase().includes(`(${read}.)`)).toBe(read !== 'read');
    }
  const rosewood = protectedMaterials.find(({ id }) => id === 'rosewood');
  expect(rosewood && materialSentences(rosewood)[0]).toContain('(From memory.)');
});
