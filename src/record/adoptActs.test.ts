import { describe, expect, it } from 'vitest';
import { act, finding, opening } from '../../test/kits/drafts.ts';
import type { DraftEvent, Json, RecordedEvent } from '../piece/event.ts';
import { planAdoption } from './adoptActs.ts';
import { hashEvent } from './chain.ts';
import { faultOf, foreign, plan, recorded, resealed, titled } from './testing/foreignActs.ts';

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
