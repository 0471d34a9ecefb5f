import { describe, expect, it } from 'vitest';
import { act, finding, opening } from '../../test/kits/drafts.ts';
import type { DraftEvent, Json, RecordedEvent } from '../piece/event.ts';
import { planAdoption } from './adoptActs.ts';
import { chainStart } from './chain.ts';
import { faultOf, foreign, plan, recorded, titled } from './testing/foreignActs.ts';

describe('a piece that grew in both records', () => {
  const open = opening('one');
  const ours = (...drafts: DraftEvent[]) => recorded(open, ...drafts);
  const note = (path: string[], to: Json | undefined = 'x') =>
    act('one', 'piece-described', [{ path, ...(to === undefined ? {} : { to }) }], { device: 'other' });

  it('takes the new acts after those made here where other places were changed', () => {
    const planned = plan(recorded(open, finding('one', 'a', 'splat')), ours(titled('A')));
    expect(planned).toMatchObject({ ok: true, value: { known: 1, fresh: [{ kind: 'finding-recorded' }] } });
  });

  it('is left as it is where the same place was changed, or one within the other, and the places are named', () => {
    const both = (here: string[], there: string[]) =>
      faultOf(recorded(open, note(there)), ours(note(here)))?.message.match(
        /both changed (.*?)\. Nothing/,
      )?.[1];
    expect(both(['title'], ['title'])).toBe('title');
    expect(both(['opinion', 'place'], ['opinion', 'place'])).toBe('opinion place');
    const whole = recorded(
      open,
      act('one', 'part-described', [{ path: ['parts', 'rail'], to: { id: 'rail', words: 'x' } }]),
    );
    const within = ours(
      act('one', 'part-described', [{ path: ['parts', 'rail'], to: { id: 'rail' } }]),
      act('one', 'part-described', [{ path: ['parts', 'rail', 'words'], to: 'y' }]),
    );
    expect(faultOf(whole, within)?.code).toBe('adopt.both-changed');
    expect(faultOf(within, whole)?.code).toBe('adopt.both-changed');
    expect(faultOf(whole, within)?.path).toBe('piece');
    // Here or there alone: an opinion set as a whole, and its place.
    const opinion = recorded(open, note(['opinion'], { place: 'Salem' }));
    const place = ours(note(['opinion', 'place']));
    expect(faultOf(opinion, place)?.message).toContain('both changed opinion. Nothing');
    expect(faultOf(place, opinion)?.message).toContain('both changed opinion place. Nothing');
    // Two places within one are not within each other.
    expect(plan(recorded(open, note(['opinion', 'place'])), ours(note(['opinion', 'reasons']))).ok).toBe(
      true,
    );
  });

  it('is left as it is where it was opened in both, each by itself', () => {
    const message = faultOf(recorded(opening('one')), recorded(opening('one')))?.message;
    expect(message).toContain('both changed all of it. Nothing was brought in');
  });

  it('takes nothing where nothing is new, even where this program can’t read what the piece has become here', () => {
    const there = ours(titled('A'));
    const unreadable = act('one', 'piece-described', [{ path: ['title'], to: 5 }], { device: 'other' });
    const drafts = there.map(({ seq: _s, before: _b, hash: _h, ...draft }) => draft);
    expect(plan(there, recorded(...drafts, unreadable))).toMatchObject({ ok: true, value: { known: 2 } });
  });

  it('names six places at most, each once, and counts the others', () => {
    const findings = Array.from({ length: 8 }, (_, n) =>
      finding('one', `s${n}`, 'splat', { device: 'other' }),
    );
    const again = finding('one', 's0', 'splat', { device: 'other' });
    const here = Array.from({ length: 8 }, (_, n) => finding('one', `s${n}`, 'splat'));
    const message = faultOf(recorded(open, ...findings, again), ours(...here))?.message ?? '';
    expect(message).toBe(
      `This piece was worked on in both records, and both changed ${[0, 1, 2, 3, 4, 5].map((n) => `findings s${n}@splat`).join(', ')} and 2 more places. Nothing was brought in: bring the file in beside, as a piece of its own, and compare the two.`,
    );
    const six = faultOf(recorded(open, ...findings.slice(0, 6)), ours(...here))?.message ?? '';
    expect(six).toContain('findings s5@splat. Nothing was brought in');
  });

  it('is left as it is where the new acts can’t follow: an undo there of what is not the last act here', () => {
    const mine = titled('A', { device: 'other' });
    const theirs = recorded(
      open,
      mine,
      act('one', 'undo', [{ path: ['title'], to: 'A chair' }], { of: mine.id }),
    );
    // Put after an act made here, each still takes back the act before it.
    expect(plan(theirs, recorded(open, finding('one', 'a', 'splat'))).ok).toBe(true);
    const later = recorded(open, mine, finding('one', 'a', 'splat'));
    expect(faultOf(theirs, later)).toEqual({
      code: 'adopt.both-changed',
      path: 'piece',
      message:
        'This piece was worked on in both records in ways that can’t be put one after the other. Nothing was brought in: bring the file in beside, as a piece of its own, and compare the two.',
    });
  });

  it('that grew there alone, or here alone, takes what is new', () => {
    const there = recorded(open, titled('A', { device: 'other' }), titled('B', { device: 'other' }));
    expect(plan(there, there.slice(0, 2))).toMatchObject({ ok: true, value: { known: 2 } });
    expect(plan(there.slice(0, 2), there)).toMatchObject({ ok: true, value: { fresh: [], known: 2 } });
  });
});

describe('a device whose chain went on in two records', () => {
  it('is told once, where both went on from one act; two devices of one name are not', () => {
    const open = opening('one');
    const [first, ...rest] = recorded(open, titled('A'), titled('B'));
    const other = { ...(rest[0] as RecordedEvent), id: '6f1d3a52-0c4e-4b7a-9f21-3d5c8e7a1b01' };
    const remarksWith = (stands: (device: string, seq: number) => RecordedEvent | undefined) => {
      const planned = planAdoption(foreign([first, ...rest]), [first as RecordedEvent], stands);
      return planned.ok ? planned.value.remarks : planned.faults;
    };
    expect(remarksWith(() => other)).toEqual([
      'The chain of “tablet-1” went on in two records from the same act: one of them was brought back from a copy while the other was worked on. The acts of both are kept here.',
    ]);
    expect(remarksWith(() => undefined)).toEqual([]);
    expect(remarksWith(() => ({ ...other, before: 'f'.repeat(64) }))).toEqual([]);
    expect(remarksWith((_, seq) => rest[seq - 2])).toEqual([]);
    const begun = planAdoption(foreign([first]), [], () => ({ ...other, before: chainStart.hash }));
    expect(begun).toMatchObject({ ok: true, value: { remarks: [] } });
  });
});
