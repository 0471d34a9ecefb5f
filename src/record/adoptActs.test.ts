import { describe, expect, it } from 'vitest';
import { act, finding, opening } from '../../test/kits/drafts.ts';
import type { Change, DraftEvent, Json, RecordedEvent } from '../piece/event.ts';
import { withBefore } from '../piece/fold.ts';
import { type ForeignActs, planAdoption } from './adoptActs.ts';
import { chainStart, type Head, hashEvent, linkEvent } from './chain.ts';

/** Acts as a record keeps them: with what stood before, on one chain for each device. */
function recorded(...drafts: DraftEvent[]): RecordedEvent[] {
  let document: Json | undefined;
  const heads = new Map<string, Head>();
  return drafts.map((draft) => {
    const changes = withBefore(document, draft.changes);
    document = folded(document, changes);
    const event = linkEvent({ ...draft, changes }, heads.get(draft.device) ?? chainStart);
    heads.set(draft.device, event);
    return event;
  });
}

function folded(document: Json | undefined, changes: readonly Change[]): Json | undefined {
  return changes.reduce<Json | undefined>((state, { path, to }) => set(state, path, to), document);
}

function set(
  state: Json | undefined,
  [key, ...rest]: readonly string[],
  to: Json | undefined,
): Json | undefined {
  if (key === undefined) return to;
  const within = { ...(state as { [key: string]: Json }) };
  const inner = set(within[key], rest, to);
  if (inner === undefined) delete within[key];
  else within[key] = inner;
  return within;
}

const resealed = (event: RecordedEvent): RecordedEvent => ({ ...event, hash: hashEvent(event) });
const nobody = () => undefined;
const foreign = (acts: readonly unknown[], more: Partial<ForeignActs> = {}): ForeignActs => ({
  piece: 'one',
  record: 'theirs',
  acts,
  issued: new Map(),
  ...more,
});
const plan = (
  acts: readonly unknown[],
  here: readonly RecordedEvent[] = [],
  more: Partial<ForeignActs> = {},
) => planAdoption(foreign(acts, more), here, nobody);
const faultOf = (
  acts: readonly unknown[],
  here: readonly RecordedEvent[] = [],
  more: Partial<ForeignActs> = {},
) => {
  const planned = plan(acts, here, more);
  return planned.ok ? undefined : planned.faults[0];
};
const titled = (to: string, more: Partial<DraftEvent> = {}) =>
  act('one', 'piece-described', [{ path: ['title'], to }], more);

describe('acts of another record that are new here', () => {
  it('come in with what each was where it was made, and without what a record fills in', () => {
    const acts = recorded(opening('one'), titled('A'));
    const planned = plan(acts);
    if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
    expect(planned.value).toMatchObject({ known: 0, remarks: [] });
    expect(planned.value.fresh).toHaveLength(2);
    for (const [index, fresh] of planned.value.fresh.entries()) {
      const { seq, before, hash, ...draft } = acts[index] as RecordedEvent;
      expect(fresh).toEqual({ ...draft, origin: { record: 'theirs', seq, before, hash } });
    }
  });

  it('keep the origin they had already', () => {
    const there = { seq: 9, before: '1'.repeat(64) };
    const [opened] = recorded(opening('one')) as [RecordedEvent];
    const origin = { record: 'a third', ...there, hash: hashEvent({ ...opened, ...there }) };
    const acts = [resealed({ ...opened, origin })];
    expect(plan(acts)).toMatchObject({ ok: true, value: { fresh: [{ origin }] } });
    // One that does not come to the hash it says it had there is refused.
    const untrue = resealed({ ...opened, origin: { ...origin, hash: '2'.repeat(64) } });
    expect(faultOf([opened, untrue])).toEqual({
      code: 'adopt.origin-differs',
      path: '1',
      message: 'What act 2 says it was in the record it was made in is not so: its hash there differs.',
    });
  });

  it('are passed over where they are here already', () => {
    const acts = recorded(opening('one'), titled('A'), titled('B'));
    expect(plan(acts, acts)).toEqual({ ok: true, value: { fresh: [], known: 3, remarks: [] } });
    expect(plan(acts, acts.slice(0, 2))).toMatchObject({
      ok: true,
      value: { fresh: [{ id: acts[2]?.id }], known: 2 },
    });
    // What they say stood before may differ here: they are one act by what they set.
    const elsewhere = acts.map((event) => ({
      ...event,
      changes: event.changes.map(({ path, to }) => ({ path, to })),
    }));
    expect(plan(acts, elsewhere)).toMatchObject({ ok: true, value: { known: 3 } });
  });

  it('come in as those of another piece without an origin, and are told of no fork', () => {
    const acts = recorded(opening('was'), act('was', 'piece-described', [{ path: ['title'], to: 'A' }]));
    const renamed = (all: readonly RecordedEvent[]) =>
      all.map((event) => ({
        ...event,
        piece: 'one',
        changes: event.changes.map((change) =>
          change.path.length === 0
            ? { ...change, to: { ...(change.to as object), id: 'one' } as Json }
            : change,
        ),
      }));
    // Where the same acts come in as they are, the other act under the second one's number is told.
    const forked = () => ({ ...(acts[1] as RecordedEvent), id: '6f1d3a52-0c4e-4b7a-9f21-3d5c8e7a1b01' });
    const planned = planAdoption(foreign(acts, { was: 'was', renamed }), [], forked);
    if (!planned.ok) throw new Error(JSON.stringify(planned.faults));
    expect(planned.value.remarks).toEqual([]);
    expect(planned.value.fresh).toHaveLength(2);
    for (const fresh of planned.value.fresh) expect(Object.keys(fresh)).not.toContain('origin');
  });
});

describe('acts of another record that are refused', () => {
  it('what is no act of this piece, by its number', () => {
    const acts = recorded(opening('one'), titled('A'));
    const notAnAct = (path: string) => ({
      code: 'adopt.not-an-act',
      path,
      message: `Act ${Number(path) + 1} is none of this piece, or not one this program knows.`,
    });
    expect(faultOf([acts[0], { ...acts[1], kind: 'burned' }])).toEqual(notAnAct('1'));
    expect(faultOf(['x'])).toEqual(notAnAct('0'));
    expect(faultOf(acts, [], { piece: 'two' })).toEqual(notAnAct('0'));
    expect(faultOf(acts, [], { was: 'two' })).toEqual(notAnAct('0'));
  });

  it('one that was changed after it was recorded', () => {
    const [open, second] = recorded(opening('one'), titled('A'));
    expect(faultOf([open, { ...second, who: 'Somebody else' }])).toEqual({
      code: 'adopt.act-changed',
      path: '1',
      message: 'Act 2 is not as it was recorded: its hash differs.',
    });
  });

  it('a history that does not begin with the opening, or says one act twice', () => {
    const [open, second] = recorded(opening('one'), titled('A')) as [RecordedEvent, RecordedEvent];
    expect(faultOf([second])?.code).toBe('adopt.not-opened');
    expect(faultOf([second])?.message).toBe('The acts do not begin with the opening of the piece.');
    expect(faultOf([])?.code).toBe('adopt.not-opened');
    expect(faultOf([open, second, second])).toMatchObject({
      code: 'adopt.twice',
      message: 'An act stands in the file twice.',
    });
  });

  it('one that a device could not hand in either, anywhere in a long history', () => {
    const many = Array.from({ length: 1001 }, (_, n) => titled(`Title ${n}`));
    const acts = recorded(opening('one'), ...many);
    expect(plan(acts)).toMatchObject({ ok: true, value: { known: 0 } });
    const last = acts.at(-1) as RecordedEvent;
    const odd = resealed({ ...last, device: 'a\nb' });
    expect(faultOf([...acts.slice(0, -1), odd])?.code).toBe('record.bad-id');
  });

  it('one that lies about what stood before it, though its hash fits', () => {
    const [open, second] = recorded(opening('one'), titled('A')) as [RecordedEvent, RecordedEvent];
    const lying = resealed({ ...second, changes: [{ path: ['title'], to: 'A', from: 'Another chair' }] });
    expect(faultOf([open, lying])).toEqual({
      code: 'adopt.before-differs',
      path: second.id,
      message: `What act ${second.id} says stood there before is not what stood there.`,
    });
  });

  it('one that is here too and says something else', () => {
    const [open, second] = recorded(opening('one'), titled('A')) as [RecordedEvent, RecordedEvent];
    const here = [open, resealed({ ...second, who: 'Somebody else' })];
    expect(faultOf([open, second], here)).toEqual({
      code: 'adopt.other-act',
      path: second.id,
      message: `The act ${second.id} is in this record too and says something else: one of the two was changed. Nothing was brought in.`,
    });
    const other = [open, resealed({ ...second, changes: [{ path: ['title'], to: 'B' }] })];
    expect(faultOf([open, second], other)?.code).toBe('adopt.other-act');
  });

  it('an act that may not be made, and a history that comes to no piece', () => {
    expect(
      faultOf(recorded(opening('one'), act('one', 'piece-described', [{ path: ['id'], to: 'x' }])))?.code,
    ).toBe('record.fixed-place');
    expect(
      faultOf(recorded(opening('one'), act('one', 'piece-described', [{ path: ['title'], to: 5 }])))?.code,
    ).toBe('record.does-not-fit');
  });
});

describe('an undo from another record', () => {
  const [open, a, b] = [opening('one'), titled('A'), titled('B')];
  const undo = (of: DraftEvent, to: string, kind: 'undo' | 'redo' = 'undo') =>
    act('one', kind, [{ path: ['title'], to }], { of: of.id });

  it('comes in where it takes back the act before it, and a redo where it brings that back', () => {
    expect(plan(recorded(open, a, b, undo(b, 'A'))).ok).toBe(true);
    expect(plan(recorded(open, a, b, undo(b, 'A'), undo(b, 'B', 'redo'))).ok).toBe(true);
  });

  it.each([
    ['another act', [open, a, b, undo(a, 'A chair')]],
    ['something else than stood there', [open, a, b, undo(b, 'C')]],
    ['nothing', [open, undo(a, 'A chair')]],
    ['the act before it, said of another', [open, a, b, undo(a, 'A')]],
    ['what was not taken back', [open, a, b, undo(b, 'B', 'redo')]],
  ])('is refused where it takes back or brings back %s', (_, drafts) => {
    const fault = faultOf(recorded(...drafts));
    expect(fault?.code).toBe('adopt.undo-differs');
    expect(fault?.message).toBe(`Act ${fault?.path} takes back something other than the act before it.`);
    expect(fault?.path).toBe(drafts.at(-1)?.id);
  });
});

describe('a signature from another record', () => {
  const manifest = 'a'.repeat(64);
  const revision = {
    revision: 1,
    by: 'Ann',
    on: '2026-11-25',
    at: '2026-11-25T10:00:00.000+01:00',
    isNew: '',
    why: '',
    manifestSha256: manifest,
    pdfSha256: manifest,
    documentSha256: manifest,
    head: manifest,
    count: 1,
    programVersion: '1',
    knowledgeVersion: '1',
    knowledgeSha256: manifest,
  };
  const open = opening('one');
  const issuing = (path: string[], to: Json | undefined) =>
    act('one', 'opinion-issued', [
      { path: ['opinion'], to: { status: 'signed' } },
      { path, ...(to === undefined ? {} : { to }) },
    ]);
  const issue = (path: string[], to: Json | undefined) => recorded(open, issuing(path, to));

  it('comes in where its files came with it as they were signed', () => {
    const came = { issued: new Map([['1', manifest]]) };
    expect(plan(issue(['issued', '1'], revision), [], came).ok).toBe(true);
    const differs = {
      code: 'adopt.revision-differs',
      message: 'A signed revision did not come with its files as they were signed.',
    };
    expect(faultOf(issue(['issued', '1'], revision))).toMatchObject(differs);
    expect(
      faultOf(issue(['issued', '1'], { ...revision, manifestSha256: 'b'.repeat(64) }), [], came),
    ).toMatchObject(differs);
    expect(faultOf(issue(['issued', '2'], revision), [], came)).toMatchObject(differs);
    expect(faultOf(issue(['issued'], { 1: revision } as Json), [], came)).toMatchObject(differs);
    expect(faultOf(issue(['title'], 'x'), [], came)).toMatchObject(differs);
    const onlyTheHash = { manifestSha256: manifest };
    expect(faultOf(issue(['issued', '1', 'why'], onlyTheHash), [], came)).toMatchObject(differs);
    expect(faultOf(issue(['parts', '1'], onlyTheHash), [], came)).toMatchObject(differs);
  });

  it('takes no revision away, and puts none there that names no files', () => {
    const differs = { code: 'adopt.revision-differs' };
    expect(faultOf(issue(['issued', '1'], undefined))).toMatchObject(differs);
    expect(faultOf(issue(['issued', '1'], {}))).toMatchObject(differs);
    expect(faultOf(issue(['issued', '1'], null))).toMatchObject(differs);
  });

  it('of the old kind comes in where it only changes the opinion', () => {
    const old = (path: string[], to: Json) =>
      recorded(opening('one'), act('one', 'opinion-signed', [{ path, to }]));
    expect(plan(old(['opinion', 'status'], 'signed')).ok).toBe(true);
    expect(faultOf(old(['issued', '1'], revision))?.code).toBe('record.signed-by-its-own-way');
    const both = act('one', 'opinion-signed', [
      { path: ['opinion', 'status'], to: 'signed' },
      { path: ['issued', '1'], to: revision },
    ]);
    expect(faultOf(recorded(open, both))?.code).toBe('record.signed-by-its-own-way');
    const asChanged = act('one', 'opinion-changed', [{ path: ['opinion', 'status'], to: 'signed' }]);
    expect(faultOf(recorded(open, asChanged))?.code).toBe('record.signed-by-its-own-way');
  });

  it('comes in after what is here already, and not after what was entered here meanwhile', () => {
    const came = { issued: new Map([['1', manifest]]) };
    const theirs = recorded(open, finding('one', 'a', 'splat'), issuing(['issued', '1'], revision));
    expect(plan(theirs, theirs.slice(0, 1), came)).toMatchObject({ ok: true, value: { known: 1 } });
    const ours = recorded(open, titled('A', { device: 'other' }));
    expect(faultOf(theirs, ours, came)).toEqual({
      code: 'adopt.signed-meanwhile',
      path: 'piece',
      message:
        'This piece was signed in the record it comes from while it was worked on here, and a revision says what stood in it to the last word: it can’t be put after what was entered here. Nothing was brought in: bring the file into a data folder of its own (--data) and compare the two there.',
    });
  });
});

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
