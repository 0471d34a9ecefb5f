import { expect, it } from 'vitest';
import { alikeAmong, withAlike, witnesses } from './alikeLooks.ts';
import type { Look } from './preparedCase.ts';
import { smallKnowledge } from './testing/smallKnowledge.ts';

const { signs } = smallKnowledge();
const look = (sign: string, part: string, state: Look['state'] = 'present'): Look => ({
  key: `${sign}@${part}`,
  sign: signs[sign] as Look['sign'],
  part,
  state,
  sure: 'plain',
});
const counted = (...looks: Look[]) => withAlike(looks).map(({ alike }) => alike);

// By hand, n / (1 + (n − 1) · 0.6): 2 / 1.6, 4 / 2.8, and ever more toward 1 / 0.6.
it('counts like looks for fewer witnesses than they are', () => {
  expect(witnesses(1, 0.6)).toBe(1);
  expect(witnesses(2, 0.6)).toBeCloseTo(1.25, 12);
  expect(witnesses(4, 0.6)).toBeCloseTo(2.8 ** -1 * 4, 12);
  expect(witnesses(1e9, 0.6)).toBeCloseTo(1 / 0.6, 6);
  expect(witnesses(7, 0)).toBe(7);
  expect(witnesses(7, 1)).toBe(1);
});

it('tells of a tool mark, a fastener and a trace of an alteration on how many parts it was found alike', () => {
  expect(counted(look('saw-arcs', 'rail'), look('saw-arcs', 'leg-left'))).toEqual([2, 2]);
  expect(counted(look('early-nail', 'leg-left'), look('early-nail', 'leg-right'))).toEqual([2, 2]);
  expect(counted(look('cuff', 'leg-left'), look('cuff', 'leg-right'))).toEqual([2, 2]);
});

it('takes all traces of one kind of campaign together', () => {
  const campaign = { kind: 'glued-anew', shows: { in100: '50, 40–60' } };
  const other = {
    ...look('late-screw', 'rail'),
    sign: { ...(signs['late-screw'] as Look['sign']), campaign },
  };
  expect(counted(look('new-glue', 'leg-left'), other)).toEqual([2, 2]);
});

it('leaves what differs its full weight, and what the model shares of itself', () => {
  expect(counted(look('saw-arcs', 'rail'), look('saw-arcs', 'leg-left', 'absent'))).toEqual([
    undefined,
    undefined,
  ]);
  expect(counted(look('saw-arcs', 'rail'), look('plane-tracks', 'leg-left'))).toEqual([undefined, undefined]);
  // A habit, true aging, true wear and where a part is from.
  for (const sign of ['centred', 'darkened', 'worn', 'odd-holes'])
    expect(counted(look(sign, 'rail'), look(sign, 'leg-left'))).toEqual([undefined, undefined]);
});

it('takes wear and age that somebody put on for one hand’s', () => {
  const shows = { natural: { in100: '2, 1–3' }, none: { in100: '2, 1–3' }, imitated: { in100: '40, 30–50' } };
  for (const from of ['darkened', 'worn']) {
    const sign = { ...(signs[from] as Look['sign']), shows };
    const [one, two] = ['rail', 'leg-left'].map((part) => ({ ...look(from, part), sign }));
    expect(counted(one as Look, two as Look)).toEqual([2, 2]);
  }
});

it('takes one campaign for another’s no more than what is as often natural for put on', () => {
  const campaign = (kind: string, part: string) => ({
    ...look('late-screw', part),
    sign: { ...(signs['late-screw'] as Look['sign']), campaign: { kind, shows: { in100: '50, 40–60' } } },
  });
  expect(counted(campaign('a', 'rail'), campaign('b', 'leg-left'))).toEqual([undefined, undefined]);
  const even = { in100: '40, 30–50' };
  const little = { in100: '2, 1–3' };
  for (const shows of [
    { natural: even, none: little, imitated: even },
    { natural: little, none: even, imitated: even },
  ]) {
    const [one, two] = ['rail', 'leg-left'].map((part) => ({
      ...look('worn', part),
      sign: { ...(signs.worn as Look['sign']), shows },
    }));
    expect(counted(one as Look, two as Look)).toEqual([undefined, undefined]);
  }
});

it('leaves a look as it is where nothing changes', () => {
  const one = look('saw-arcs', 'rail');
  expect(withAlike([one])[0]).toBe(one);
  const two = withAlike([one, look('saw-arcs', 'leg-left')]);
  expect(withAlike(two)[0]).toBe(two[0]);
});

it('leaves a measurement of the cause itself alone', () => {
  const measured = (part: string) => ({
    ...look('saw-arcs', part),
    byState: { hand: 0.1, 'early-machine': 1 },
  });
  expect(counted(measured('rail'), measured('leg-left'))).toEqual([undefined, undefined]);
});

it('counts parts and not looks, and anew when one is turned', () => {
  const twice = [look('saw-arcs', 'rail'), look('saw-arcs', 'leg-left'), look('saw-arcs', 'leg-right')];
  const told = withAlike(twice);
  expect(told.map(({ alike }) => alike)).toEqual([3, 3, 3]);
  const turned = withAlike(told.map((each, i) => (i === 0 ? { ...each, state: 'absent' as const } : each)));
  expect(turned.map(({ alike }) => alike)).toEqual([undefined, 2, 2]);
  expect(alikeAmong(look('saw-arcs', 'leg-right'), told.slice(0, 2))).toBe(3);
  expect(alikeAmong(look('saw-arcs', 'leg-right'), told)).toBe(3);
  expect(alikeAmong(look('saw-arcs', 'rail', 'absent'), told)).toBe(1);
});
