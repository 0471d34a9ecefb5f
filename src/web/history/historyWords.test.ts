import { describe, expect, test } from 'vitest';
import { engagement } from '../../piece/engagement.ts';
import type { RecordedEvent } from '../../piece/event.ts';
import { expectedAtFirst } from '../../piece/observationWords.ts';
import { opinion } from '../../piece/piece.ts';
import { fieldName } from './fieldName.ts';
import { historyEntries } from './historyWords.ts';
import type { NameBook } from './nameBook.ts';
import { valueWords } from './valueWords.ts';

const names: NameBook = {
  sign: (id) => id.replaceAll('-', ' '),
  part: (id) => id.replaceAll('-', ' '),
  measure: (id) => id,
  photo: (id) => id,
};

const event = (seq: number, fields: Partial<RecordedEvent>): RecordedEvent => ({
  id: `00000000-0000-4000-8000-00000000000${seq}`,
  piece: 'p',
  kind: 'piece-described',
  changes: [{ path: ['title'], to: 'x' }],
  who: 'I. Vantrey',
  device: 'Bench',
  at: '2026-11-25T10:15:00.000+01:00',
  seq,
  before: '',
  hash: '',
  ...fields,
});

describe('the history in sentences', () => {
  test('tells an observation of one’s own: entered, changed in a word of its six, withdrawn; and the looking over', () => {
    const own = (words: string, copied: string) => ({
      id: 'o',
      words,
      part: 'back-rail',
      expected: { ...expectedAtFirst, copied },
      photos: [],
    });
    const path = ['observations', 'o'];
    const told = historyEntries(
      [
        event(1, { kind: 'observation-recorded', changes: [{ path, to: own('Cut down.', 'often') }] }),
        event(2, {
          kind: 'observation-recorded',
          changes: [{ path, from: own('Cut down.', 'often'), to: own('Cut down.', 'seldom') }],
        }),
        event(3, { kind: 'observation-withdrawn', changes: [{ path, from: own('Cut down.', 'seldom') }] }),
        event(4, { kind: 'looked-over', changes: [{ path: ['lookedOver'], to: true }] }),
      ],
      names,
    );
    expect(told.map(({ sentence }) => sentence)).toEqual([
      'Observed, beyond all signs: “Cut down” on the back rail.',
      'Changed the observation of one’s own “Cut down” on the back rail.',
      'Withdrew the observation of one’s own “Cut down” on the back rail.',
      'Looked the whole over for mends, later parts and changes, and found none.',
    ]);
    expect(told[1]?.before).toContain('often if a later copy');
    expect(told[1]?.after).toContain('seldom if a later copy');
  });

  test('tells how the case was settled, field by field, and that it was taken back', () => {
    const path = (field: string) => ['settled', field];
    const told = historyEntries(
      [
        event(1, {
          kind: 'case-settled',
          changes: [{ path: ['settled'], to: { by: 'document', on: '2026-03-01' } }],
        }),
        event(2, { kind: 'case-settled', changes: [{ path: path('making'), to: 'of-the-period' }] }),
        event(3, { kind: 'case-settled', changes: [{ path: path('condition'), to: 'period-altered' }] }),
        event(4, {
          kind: 'case-settled',
          changes: [
            { path: path('making'), from: 'of-the-period', to: 'to-deceive' },
            { path: path('condition'), from: 'period-altered' },
          ],
        }),
        event(5, {
          kind: 'case-settled',
          changes: [{ path: path('by'), from: 'document', to: 'second-expert' }],
        }),
        event(6, {
          kind: 'case-settled',
          changes: [{ path: path('rests'), from: [], to: ['dowels@back-rail'] }],
        }),
        event(7, {
          kind: 'settlement-withdrawn',
          changes: [
            { path: ['settled'], from: { by: 'second-expert', making: 'to-deceive', words: 'A letter.' } },
          ],
        }),
      ],
      names,
    );
    expect(told.map(({ sentence, before, after }) => [sentence, before, after])).toEqual([
      ['Recorded that the case is settled.', undefined, 'A document of the time'],
      ['Wrote what it turned out to be.', undefined, 'Of the period'],
      ['Wrote the condition it turned out to be in.', undefined, 'Of the period, altered or improved'],
      ['Changed what it turned out to be.', 'Of the period', 'Made or altered to pass as older'],
      ['Changed what settled the case.', 'A document of the time', 'A second expert'],
      [
        'Changed the findings that the verdict itself rests on.',
        'none',
        `“${names.sign('dowels')}” on the ${names.part('back-rail')}`,
      ],
      [
        'Took back that the case is settled.',
        'Made or altered to pass as older; A second expert; A letter.',
        undefined,
      ],
    ]);
  });

  test('tells a finding, what it was before, and marks what was taken back', () => {
    const told = historyEntries(
      [
        event(1, {
          kind: 'finding-recorded',
          changes: [
            {
              path: ['findings', 'dowels@front-rail'],
              from: { state: 'absent', sure: 'plain' },
              to: { state: 'present', sure: 'fairly' },
            },
          ],
        }),
        event(2, {
          kind: 'undo',
          of: event(1, {}).id,
          changes: [{ path: ['findings', 'dowels@front-rail'] }],
        }),
      ],
      names,
    );
    expect(told[0]).toMatchObject({
      sentence: 'Found “dowels” on the front rail: present, fairly sure.',
      before: 'absent',
      takenBack: true,
    });
    expect(told[1]?.sentence).toBe('Took back: found “dowels” on the front rail: present, fairly sure.');
    const redone = historyEntries(
      [
        event(1, {}),
        event(2, { kind: 'undo', of: event(1, {}).id }),
        event(3, { kind: 'redo', of: event(1, {}).id }),
      ],
      names,
    );
    expect(redone[0]?.takenBack).toBe(false);
  });

  test('says wrote, changed and emptied', () => {
    const of = (from: string | undefined, to: string | undefined) =>
      historyEntries(
        [
          event(1, {
            kind: 'engagement-changed',
            changes: [
              {
                path: ['engagement', 'client'],
                ...(from === undefined ? {} : { from }),
                ...(to === undefined ? {} : { to }),
              },
            ],
          }),
        ],
        names,
      )[0]?.sentence;
    expect(of('', 'Orme')).toBe('Wrote the client.');
    expect(of('Orme', 'Mrs Orme')).toBe('Changed the client.');
    expect(of('Orme', '')).toBe('Emptied the client.');
  });

  test('names the part that a photo shows', () => {
    const [told] = historyEntries(
      [event(1, { kind: 'photo-described', changes: [{ path: ['photos', 'p1', 'part'], to: 'splat' }] })],
      { ...names, part: (id) => `${id} of the chair` },
    );
    expect(told?.after).toBe('splat of the chair');
  });

  test('choices are told in words, not by their ids', () => {
    expect(valueWords(['opinion', 'reading'], 'made-up')).toBe('Married, or assembled from old parts');
    expect(valueWords(['engagement', 'purpose'], 'estate')).toBe('An estate');
    const rail = {
      id: 'rail',
      missing: true,
      woods: ['walnut'],
      makes: { turned: false, tacked: true },
      words: '',
    };
    expect(valueWords(['parts', 'rail'], rail)).toBe('missing, walnut, not turned, tacked');
    expect(valueWords(['parts', 'rail'], { id: 'rail' })).toBeUndefined();
    expect(valueWords(['claim', 'period'], [1760, 1790])).toBe('1760–1790');
    expect(valueWords(['engagement', 'askedOn'], '2026-11-02')).toBe('2 November 2026');
  });

  test('every field of engagement and opinion has a name in words', () => {
    const paths = [
      ...Object.keys(engagement.shape).map((key) => ['engagement', key]),
      ...Object.keys(opinion.shape).map((key) => ['opinion', key]),
    ];
    for (const path of paths) expect(fieldName(path, names)).not.toContain('›');
  });

  test('says what stood at a place in words, never as it is kept', () => {
    const seen = {
      id: 'plugged@top',
      sign: 'plugged',
      part: 'top',
      state: 'present',
      inPhotoOnly: false,
      photos: [],
    };
    const found = (more: Record<string, string>) =>
      valueWords(['findings', 'plugged@top'], { ...seen, ...more });
    expect(found({ sure: 'plain', words: '' })).toBe('present');
    expect(found({ sure: 'hint', words: 'Two of them.' })).toBe('present, a hint; Two of them.');
    expect(found({ sure: 'hint', state: 'could-not-tell', words: '' })).toBe('could not tell');
    const size = { id: 'height', mm: 762, asEntered: '30', words: '' };
    expect(valueWords(['measures', 'height'], size)).toBe('30');
    const own = { id: 'o', words: 'Cut down.', expected: expectedAtFirst, photos: [] };
    expect(valueWords(['observations', 'o'], own)).toMatch(/^Cut down\.; \w/);
    expect(valueWords(['photos', 'p'], { id: 'p', hash: 'ab12', caption: '' })).toBe(
      'a photo without a caption',
    );
    expect(valueWords(['photos', 'p'], { id: 'p', hash: 'ab12', caption: 'The back' })).toBe('The back');
    const bench = {
      id: 'b',
      calculation: 'wood.movement',
      title: 'The top',
      says: '1/4 in narrower.',
      input: {},
      output: {},
    };
    expect(valueWords(['bench', 'b'], bench)).toBe('The top; 1/4 in narrower.');
  });
});
