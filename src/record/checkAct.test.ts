import { describe, expect, it } from 'vitest';
import { act, opening } from '../../test/kits/drafts.ts';
import { checkAct, readPiece } from './checkAct.ts';
import { newState } from './pieceState.ts';

const open = newState({ id: 'one', form: 'side-chair' });
const titled = (path: string[]) => act('one', 'piece-described', [{ path, to: 'x' }]);

type Refusal = [what: string, found: () => unknown, code: string, path: string, message: string];

const signedElsewhere: [string, string, string] = [
  'record.signed-by-its-own-way',
  'changes',
  'An opinion is signed on its own page, which keeps all it rests on: open the opinion, read it, and sign there.',
];

const [writer, another] = ['6f1d3a52-0c4e-4b7a-9f21-3d5c8e7a1b01', '6f1d3a52-0c4e-4b7a-9f21-3d5c8e7a1b02'];
const unsettledTitle = {
  ...open,
  overwritten: [
    { act: another, path: ['parts'], who: '', device: 'laptop', at: '2026-11-25T10:00:00.000+01:00' },
    {
      act: writer,
      path: ['title'],
      later: 'B',
      who: '',
      device: 'laptop',
      at: '2026-11-25T10:00:00.000+01:00',
    },
  ],
};
const settling = (of: string, paths: string[][]) =>
  act(
    'one',
    'overwrite-settled',
    paths.map((path) => ({ path, to: 'B' })),
    { of },
  );

/** Each refusal with its place and its whole sentence: it is shown to the person as it stands. */
const refused: Refusal[] = [
  [
    'an undo handed in',
    () => checkAct(open, act('one', 'undo', [{ path: ['title'], to: '' }]), false),
    'record.undo-by-its-own-way',
    'kind',
    'Undo and redo are asked for at the piece, not handed in as acts.',
  ],
  [
    'a redo handed in',
    () => checkAct(open, act('one', 'redo', [{ path: ['title'], to: '' }]), false),
    'record.undo-by-its-own-way',
    'kind',
    'Undo and redo are asked for at the piece, not handed in as acts.',
  ],
  [
    'an act that says which it takes back',
    () => checkAct(open, { ...titled(['title']), of: '6f1d3a52-0c4e-4b7a-9f21-3d5c8e7a1b01' }, false),
    'record.undo-by-its-own-way',
    'kind',
    'Undo and redo are asked for at the piece, not handed in as acts.',
  ],
  [
    'an example that is described',
    () => checkAct(open, titled(['putAway']), true),
    'record.example-is-read-only',
    'piece',
    'The worked examples stay as they are: make it yours to work on a copy.',
  ],
  [
    'an example put away with something more',
    () =>
      checkAct(
        open,
        act('one', 'piece-put-away', [
          { path: ['putAway'], to: true },
          { path: ['title'], to: 'x' },
        ]),
        true,
      ),
    'record.example-is-read-only',
    'piece',
    'The worked examples stay as they are: make it yours to work on a copy.',
  ],
  [
    'a piece opened twice',
    () => checkAct(open, opening('one'), false),
    'record.already-open',
    'piece',
    'A piece of this name is in the record already.',
  ],
  [
    'a piece opened by a part of it',
    () => checkAct(newState(), act('one', 'piece-opened', [{ path: ['title'], to: 'x' }]), false),
    'record.open-whole',
    'changes',
    'A piece is opened by one change that sets all of it.',
  ],
  [
    'a piece opened by two changes',
    () =>
      checkAct(
        newState(),
        act('one', 'piece-opened', [
          { path: [], to: { id: 'one' } },
          { path: ['title'], to: 'x' },
        ]),
        false,
      ),
    'record.open-whole',
    'changes',
    'A piece is opened by one change that sets all of it.',
  ],
  [
    'an act on no piece',
    () => checkAct(newState(), titled(['title']), false),
    'record.not-opened',
    'piece',
    'There is no such piece in the record: open it first.',
  ],
  [
    'an act that sets all of a piece',
    () => checkAct(open, titled([]), false),
    'record.not-the-whole',
    'changes.0.path',
    'An act changes one place of a piece, never all of it.',
  ],
  [
    'another id',
    () => checkAct(open, titled(['id']), false),
    'record.fixed-place',
    'changes.0.path',
    '"id" of a piece never changes.',
  ],
  [
    'a piece made an example',
    () => checkAct(open, titled(['example']), false),
    'record.fixed-place',
    'changes.0.path',
    '"example" of a piece never changes.',
  ],
  [
    'a place that no piece has, second among the changes',
    () =>
      checkAct(
        open,
        act('one', 'piece-described', [
          { path: ['title'], to: 'x' },
          { path: ['insides'], to: 1 },
        ]),
        false,
      ),
    'record.unknown-place',
    'changes.1.path',
    'A piece has nothing called "insides".',
  ],
  [
    'a document of another piece',
    () => readPiece({ id: 'two', form: 'side-chair' }, 'one', false),
    'record.other-id',
    'id',
    'The piece says it is "two", and the act was for "one".',
  ],
  [
    'an example of one’s own',
    () => readPiece({ id: 'one', form: 'side-chair', example: true }, 'one', false),
    'record.not-an-example',
    'example',
    'Only the examples that come with the program are examples.',
  ],
  [
    'a finding under another name',
    () =>
      readPiece(
        {
          id: 'one',
          form: 'side-chair',
          findings: { 'a@splat': { id: 'b@splat', sign: 'b', part: 'splat', state: 'present' } },
        },
        'one',
        false,
      ),
    'record.key-and-id',
    'findings.a@splat',
    'findings.a@splat stands under another name than its own.',
  ],
  [
    'a part under another name',
    () => readPiece({ id: 'one', form: 'side-chair', parts: { arm: { id: 'leg' } } }, 'one', false),
    'record.key-and-id',
    'parts.arm',
    'parts.arm stands under another name than its own.',
  ],
  [
    'an opinion issued by words alone',
    () => checkAct(open, act('one', 'opinion-issued', [{ path: ['title'], to: 'x' }]), false),
    ...signedElsewhere,
  ],
  [
    'a status set to signed, second among the changes',
    () =>
      checkAct(
        open,
        act('one', 'opinion-changed', [
          { path: ['title'], to: 'x' },
          { path: ['opinion', 'status'], to: 'signed' },
        ]),
        false,
      ),
    ...signedElsewhere,
  ],
  [
    'a whole opinion that is signed',
    () =>
      checkAct(open, act('one', 'opinion-changed', [{ path: ['opinion'], to: { status: 'signed' } }]), false),
    ...signedElsewhere,
  ],
  [
    'a revision that no files stand behind',
    () => checkAct(open, act('one', 'opinion-changed', [{ path: ['issued', '1'], to: {} }]), false),
    ...signedElsewhere,
  ],
  [
    'all revisions taken away',
    () => checkAct(open, act('one', 'opinion-changed', [{ path: ['issued'] }]), false),
    ...signedElsewhere,
  ],
  [
    'a piece opened with a signature',
    () =>
      checkAct(
        newState(),
        act('one', 'piece-opened', [{ path: [], to: { id: 'one', opinion: { status: 'signed' } } }]),
        false,
      ),
    ...signedElsewhere,
  ],
  [
    'a piece opened with a revision',
    () =>
      checkAct(
        newState(),
        act('one', 'piece-opened', [{ path: [], to: { id: 'one', issued: { 1: {} } } }]),
        false,
      ),
    ...signedElsewhere,
  ],
  [
    'an example put away by another place',
    () => checkAct(open, act('one', 'piece-put-away', [{ path: ['put', 'Away'], to: true }]), true),
    'record.example-is-read-only',
    'piece',
    'The worked examples stay as they are: make it yours to work on a copy.',
  ],
  ...[
    ['of an act that wrote over nothing', another, ['title']],
    ['of a place it did not write over', writer, ['form']],
  ].map(
    ([what, of, path]): Refusal => [
      `a value settled ${what}`,
      () => checkAct(unsettledTitle, settling(of as string, [path as string[]]), false),
      'record.nothing-to-settle',
      'of',
      'Which value holds here was settled already, or the act that wrote over it was taken back: look at it once more.',
    ],
  ),
  [
    'two values settled of which one was not written over',
    () => checkAct(unsettledTitle, settling(writer, [['title'], ['form']]), false),
    'record.nothing-to-settle',
    'of',
    'Which value holds here was settled already, or the act that wrote over it was taken back: look at it once more.',
  ],
  [
    'a measure and a photo under other names',
    () =>
      readPiece(
        { id: 'one', form: 'side-chair', measures: { h: { id: 'w', mm: 1, asEntered: '1' } } },
        'one',
        false,
      ),
    'record.key-and-id',
    'measures.h',
    'measures.h stands under another name than its own.',
  ],
];

describe('what the record refuses', () => {
  it.each(refused)('%s, in words and at its place', (_what, found, code, path, message) => {
    expect(found()).toEqual({ ok: false, faults: [{ code, path, message }] });
  });

  it('a document that does not fit, naming each place, or the piece where all of it is at fault', () => {
    const found = readPiece({ id: 'one', form: 7 }, 'one', false);
    expect(found).toMatchObject({ ok: false, faults: [{ code: 'record.does-not-fit', path: 'form' }] });
    expect(!found.ok && found.faults[0]?.message).toMatch(/^form does not fit: .+\. Nothing was written\.$/);
    const within = readPiece({ id: 'one', form: 'x', opinion: { status: 'burned' } }, 'one', false);
    expect(within).toMatchObject({ ok: false, faults: [{ path: 'opinion.status' }] });
    const none = readPiece('a letter', 'one', false);
    expect(!none.ok && none.faults[0]?.message).toMatch(/^The piece does not fit: /);
  });
});

describe('what the record lets in', () => {
  it('a piece opened whole, an act on one place of it, and an example put away', () => {
    expect(checkAct(newState(), opening('one'), false)).toEqual({ ok: true, value: undefined });
    expect(checkAct(open, titled(['title']), false)).toEqual({ ok: true, value: undefined });
    const away = act('one', 'piece-put-away', [{ path: ['putAway'], to: true }]);
    expect(checkAct(open, away, true)).toEqual({ ok: true, value: undefined });
  });

  it('what is settled where it was written over unseen', () => {
    expect(checkAct(unsettledTitle, settling(writer, [['title']]), false)).toEqual({
      ok: true,
      value: undefined,
    });
  });

  it('one of two values settled that the same act wrote over', () => {
    const [title] = unsettledTitle.overwritten.slice(1);
    const both = {
      ...open,
      overwritten: [title, { ...title, path: ['mode'] }] as typeof unsettledTitle.overwritten,
    };
    expect(checkAct(both, settling(writer, [['mode']]), false).ok).toBe(true);
    expect(checkAct(both, settling(writer, [['title'], ['mode']]), false).ok).toBe(true);
  });

  it('an opinion that is changed and not signed, and a piece opened with none', () => {
    const status = act('one', 'opinion-changed', [{ path: ['opinion', 'status'], to: 'draft' }]);
    expect(checkAct(open, status, false).ok).toBe(true);
    const nothingIssued = act('one', 'piece-opened', [{ path: [], to: { id: 'one', issued: {} } }]);
    expect(checkAct(newState(), nothingIssued, false).ok).toBe(true);
    const emptied = act('one', 'piece-described', [{ path: ['title'] }]);
    expect(checkAct(open, emptied, false).ok).toBe(true);
  });

  it('a document of its own name', () => {
    expect(readPiece({ id: 'one', form: 'side-chair' }, 'one', false)).toMatchObject({
      ok: true,
      value: { id: 'one', form: 'side-chair', example: false },
    });
  });
});
