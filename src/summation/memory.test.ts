import { expect, it } from 'vitest';
import { linesTogether, noughts, withRoom } from './memory.ts';

it('gives lines of noughts that are nobody else’s, short and long', () => {
  const lines = [3, 5000, 1, 40_000, 4000, 4000, 4000, 4000, 4000].map((length) => noughts(length));
  lines.forEach((line, at) => {
    expect([line.length > 0, line.every((each) => each === 0)]).toEqual([true, true]);
    line.fill(at + 1);
  });
  expect(lines.every((line, at) => line.every((each) => each === at + 1))).toBe(true);
  const [first, second] = linesTogether(2, 4);
  first?.fill(7);
  expect([...(second ?? [])]).toEqual([0, 0, 0, 0]);
});

it('lends room for the length of a call, noughts again each time, and more than there was', () => {
  const once = withRoom((lend) => {
    const outer = lend(10).fill(1);
    const large = withRoom((more) => {
      const inner = more(10).fill(2);
      return [inner.byteOffset, more(200_000).fill(3).length];
    });
    const after = lend(10);
    expect([...outer, ...after]).toEqual([...Array(10).fill(1), ...Array(10).fill(0)]);
    return large;
  });
  expect(once[1]).toBe(200_000);
  const places = [1, 2].map(() =>
    withRoom((lend) => {
      const line = lend(10);
      expect(Math.max(...line)).toBe(0);
      return line.fill(4).byteOffset;
    }),
  );
  expect(places[0]).toBe(places[1]);
  expect(() =>
    withRoom((lend) => {
      lend(10);
      throw new Error('broke off');
    }),
  ).toThrow('broke off');
  expect(withRoom((lend) => lend(10).byteOffset)).toBe(places[0]);
});
