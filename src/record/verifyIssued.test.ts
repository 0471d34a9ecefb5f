import { rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { act, opening } from '../../test/kits/drafts.ts';
import { handSigned, type Lies, signedFiles } from '../../test/kits/handSigned.ts';
import type { Json } from '../piece/event.ts';
import { issuedPaths, sha256Of, writeRevision } from './issuedFolder.ts';
import { recordHead } from './recordHead.ts';
import { checkIssued, headAt, issuedBy, revisionFaults } from './verifyIssued.ts';

const document: Json = { id: 'one', form: 'side-chair' };
const head = { hash: 'a'.repeat(64), count: 2 };

describe('the files of a revision', () => {
  const made = (lies: Lies = {}) => signedFiles(document, head, 'this record', lies);
  const faultsOf = (
    { files, issued }: ReturnType<typeof made>,
    piece = 'one',
    before: Json | undefined = document,
  ) => revisionFaults(async (name) => files.get(name), piece, issued, before);

  const noList = ['Its list of files (manifest.json) is not there as it was signed.'];
  const otherFiles = 'Its list of files and the record speak of different files.';
  const otherPiece = 'The piece in it is not what the acts before the signing come to.';
  const otherContents = 'The hash of what it rests on is not the one in its list of files.';
  const otherLine = 'What its PDF says of itself is not what the record says of it.';

  it('are as they were signed', async () => {
    expect(await faultsOf(made())).toEqual([]);
  });

  it('are told where the list of them is not there, or is another', async () => {
    const gone = made();
    gone.files.delete('manifest.json');
    expect(await faultsOf(gone)).toEqual(noList);
    const changed = made();
    changed.files.set('manifest.json', Buffer.from('{}'));
    expect(await faultsOf(changed)).toEqual(noList);
  });

  it('are each told where it is not there, or its bytes differ', async () => {
    const one = made();
    one.files.delete('case.json');
    one.files.set('weighing.json', Buffer.from('{ }'));
    expect(await faultsOf(one)).toEqual([
      'Its file case.json is not there.',
      'Its file weighing.json is not the one that was signed: its bytes differ.',
    ]);
  });

  it.each(['pdfSha256', 'documentSha256', 'knowledgeSha256'])(
    'are told where the record says another %s',
    async (which) => {
      expect(await faultsOf(made({ revision: { [which]: 'b'.repeat(64) } }))).toEqual([otherFiles]);
    },
  );

  it('are told where the piece in them is not what the acts came to', async () => {
    expect(await faultsOf(made(), 'one', { ...(document as object), title: 'Another' })).toEqual([
      otherPiece,
    ]);
    expect(await faultsOf(made(), 'one', undefined)).toEqual([]);
    const none = signedFiles(undefined, head, 'this record');
    expect(await revisionFaults(async (name) => none.files.get(name), 'one', none.issued, undefined)).toEqual(
      [],
    );
    expect(await revisionFaults(async (name) => none.files.get(name), 'one', none.issued, document)).toEqual([
      otherPiece,
    ]);
  });

  it('are told where the hash of what they rest on is another', async () => {
    // The PDF then says another one than the list.
    expect(await faultsOf(made({ manifest: { contents: 'c'.repeat(64) } }))).toEqual([
      otherContents,
      otherLine,
    ]);
  });

  it.each([
    ['piece', { piece: 'two' }],
    ['revision', { revision: 2 }],
    ['head', { head: 'b'.repeat(64) }],
    ['count', { count: 3 }],
    ['hash of what it rests on', { contents: 'b'.repeat(64) }],
  ])('are told where the PDF says another %s', async (_what, line) => {
    expect(await faultsOf(made({ line }))).toEqual([otherLine]);
  });

  it('are told where the PDF has no check line, or one that its bytes do not come to', async () => {
    const withPdf = (bytes: Buffer) => {
      const one = made();
      const { files, issued } = one;
      const list = JSON.parse((files.get('manifest.json') as Buffer).toString());
      list.files['opinion.pdf'] = sha256Of(bytes);
      const manifest = Buffer.from(JSON.stringify(list));
      files.set('opinion.pdf', bytes).set('manifest.json', manifest);
      return {
        ...one,
        issued: { ...issued, pdfSha256: sha256Of(bytes), manifestSha256: sha256Of(manifest) },
      };
    };
    expect(await faultsOf(withPdf(Buffer.from('%PDF-1.7 saved anew')))).toEqual([otherLine]);
    const { pdf } = made();
    const [altered, same] = [Buffer.from(pdf), Buffer.from(pdf)];
    altered[12] = 'B'.charCodeAt(0);
    expect(await faultsOf(withPdf(altered))).toEqual([otherLine]);
    expect(await faultsOf(withPdf(same))).toEqual([]);
  });

  it('are told where the list leaves out the PDF or the piece', async () => {
    const { files, issued } = made();
    const without = (name: string) => {
      const list = JSON.parse((files.get('manifest.json') as Buffer).toString());
      delete list.files[name];
      const manifest = Buffer.from(JSON.stringify(list));
      const read = async (asked: string) => (asked === 'manifest.json' ? manifest : files.get(asked));
      return revisionFaults(read, 'one', { ...issued, manifestSha256: sha256Of(manifest) }, document);
    };
    expect(await without('opinion.pdf')).toEqual([otherFiles, otherLine]);
    expect(await without('piece.json')).toEqual([otherPiece, otherContents]);
  });
});

describe('the head of a record after some acts', () => {
  const event = (device: string, seq: number, hash: string) => ({ event: { device, seq, hash } }) as never;
  const acts = [event('tablet', 1, 'x'), event('laptop', 1, 'y'), event('tablet', 2, 'z')];

  it('is that of the last act of each device among them', () => {
    const of = (...heads: [string, number, string][]) =>
      recordHead(
        heads.map(([device, seq, hash]) => ({ device, seq, hash })),
        heads.length,
      ).hash;
    expect(headAt(acts, 0)).toBe(of());
    expect(headAt(acts, 2)).toBe(of(['tablet', 1, 'x'], ['laptop', 1, 'y']));
    expect(headAt(acts, 3)).toBe(of(['tablet', 2, 'z'], ['laptop', 1, 'y']));
    expect(headAt(acts, 4)).toBeUndefined();
  });
});

describe('an act that signs', () => {
  it('is one of that kind with a revision in it', () => {
    const { issued } = signedFiles(document, head, 'this record');
    const signing = act('one', 'opinion-issued', [
      { path: ['opinion', 'status'], to: 'signed' },
      { path: ['issued', '1'], to: issued },
    ]);
    expect(issuedBy(signing)).toEqual(issued);
    expect(issuedBy({ ...signing, kind: 'opinion-changed' })).toBeUndefined();
    expect(issuedBy({ ...signing, changes: signing.changes.slice(0, 1) })).toBeUndefined();
    expect(issuedBy(act('one', 'opinion-issued', [{ path: ['issued', '1'], to: {} }]))).toBeUndefined();
    expect(issuedBy(opening('one'))).toBeUndefined();
  });
});

describe('the signed revisions of a record', () => {
  it('hold where all is as it was signed', async () => {
    const { dir, acts, recordId } = await handSigned();
    expect(await checkIssued(dir, acts, recordId)).toEqual({ revisions: 1, faults: [], remarks: [] });
    expect(await checkIssued(dir, [], recordId)).toMatchObject({ revisions: 0, faults: [] });
  });

  it('are each told at their place', async () => {
    const { dir, acts, recordId } = await handSigned();
    const folder = issuedPaths(dir).revision('one', 1);
    await writeFile(join(folder, 'photos.json'), '[1]');
    const place = { code: 'verify.revision-changed', path: 'issued/one/1' };
    expect((await checkIssued(dir, acts, recordId)).faults).toEqual([
      { ...place, message: 'Its file photos.json is not the one that was signed: its bytes differ.' },
    ]);
    await rm(folder, { recursive: true });
    expect(await checkIssued(dir, acts, recordId)).toEqual({
      revisions: 1,
      faults: [{ ...place, message: 'Its list of files (manifest.json) is not there as it was signed.' }],
      remarks: [],
    });
  });

  it('are told where the record has not the head it had then', async () => {
    const { dir, acts, recordId } = await handSigned();
    const [first, second, ...rest] = acts;
    const other = { ...second, event: { ...second?.event, hash: 'f'.repeat(64) } };
    expect((await checkIssued(dir, [first, other, ...rest] as typeof acts, recordId)).faults).toEqual([
      {
        code: 'verify.revision-changed',
        path: 'issued/one/1',
        message:
          'The record does not hold the acts it held when this revision was signed: some were changed, removed or put in.',
      },
    ]);
  });

  it('of another record are remarked on, for their head can’t be compared', async () => {
    const { dir, acts, recordId } = await handSigned({}, 'another record');
    const [first, second, ...rest] = acts;
    const other = { ...second, event: { ...second?.event, hash: 'f'.repeat(64) } };
    expect(await checkIssued(dir, [first, other, ...rest] as typeof acts, recordId)).toEqual({
      revisions: 1,
      faults: [],
      remarks: [
        'Revision 1 of one was signed in another record (another record): only there can its head be compared.',
      ],
    });
  });

  it('that were never signed are remarked on', async () => {
    const { dir, acts, recordId } = await handSigned();
    await writeRevision(dir, 'one', 2, new Map([['opinion.pdf', Buffer.from('cut off')]]));
    await writeRevision(dir, 'two', 1, new Map([['opinion.pdf', Buffer.from('cut off')]]));
    expect(await checkIssued(dir, acts, recordId)).toEqual({
      revisions: 1,
      faults: [],
      remarks: ['one/2', 'two/1'].map(
        (which) =>
          `issued/${which} was never signed: the program stopped before it was, and nothing speaks of it.`,
      ),
    });
  });
});
