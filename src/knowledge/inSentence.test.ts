import { expect, it } from 'vitest';
import { inSentence } from './inSentence.ts';

it.each([
  ['Flared French feet', 'flared French feet'],
  ['A small door in the middle', 'a small door in the middle'],
  ['Slip-seat frame', 'slip-seat frame'],
  ['H stretcher', 'H stretcher'],
  ['C-scrolls (arms roll forward too)', 'C-scrolls (arms roll forward too)'],
  ['X-ray shows filled joints and holes', 'X-ray shows filled joints and holes'],
  ['Windsor chair', 'Windsor chair'],
  ['Spanish-cedar', 'Spanish-cedar'],
  ['“Pegged tenons” leave nothing', '“Pegged tenons” leave nothing'],
  ['turned', 'turned'],
  ['', ''],
])('%s reads “%s” within a sentence', (label, words) => {
  expect(inSentence(label)).toBe(words);
});
