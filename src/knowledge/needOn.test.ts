import { expect, it } from 'vitest';
import { needOn } from './needOn.ts';

const chest = { family: 'case' } as const;
const chair = { family: 'seating' } as const;

it('turns nothing over that is pulled out, opened or seen from behind (common practice)', () => {
  expect(needOn('turned-over', 'drawer', chest)).toBe('pulled-out');
  expect(needOn('turned-over', 'upper-drawer', chest)).toBe('pulled-out');
  expect(needOn('turned-over', 'hood-door', chest)).toBe('opened');
  expect(needOn('turned-over', 'backboard', chest)).toBe('from-behind');
  expect(needOn('turned-over', 'bottom-board', chest)).toBe('turned-over');
  expect(needOn('turned-over', 'drawer-runner', chest)).toBe('turned-over');
});

it('lifts a seat only of what has one', () => {
  expect(needOn('seat-lifted', 'side-rail', chair)).toBe('seat-lifted');
  expect(needOn('seat-lifted', 'leg', chest)).toBe('turned-over');
  expect(needOn('seat-lifted', 'drawer', chest)).toBe('pulled-out');
  expect(needOn('seat-lifted', undefined, chest)).toBe('turned-over');
});

it('leaves alone what asks for leave', () => {
  expect(needOn('part-removed', 'drawer', chest)).toBe('part-removed');
  expect(needOn('laboratory', 'door', chest)).toBe('laboratory');
});
