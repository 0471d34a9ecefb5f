import { describe, expect, test } from 'vitest';
import { piece } from '../piece/piece.ts';
import { missingForSigning, type WeighedForSigning } from './missingForSigning.ts';

const weighed: WeighedForSigning = { leading: 'later-machine-copy', contradictions: [] };
const of = (opinion: object, more: object = {}) =>
  piece.parse({ id: 'p', form: 'side-chair', opinion, ...more });
const must = (...asked: Parameters<typeof missingForSigning>) =>
  missingForSigning(...asked)
    .filter((each) => each.must)
    .map((each) => each.id);
const written = { reading: 'later-machine-copy', conclusion: 'A chair.', reasons: 'Its joints.' };

describe('what must be there before an opinion is signed', () => {
  test('is the reading, the conclusion and the reasons', () => {
    expect(must(of({}), weighed)).toEqual(['reading', 'conclusion', 'reasons']);
    expect(must(of({ ...written, conclusion: ' ' }), weighed)).toEqual(['conclusion']);
    expect(must(of(written), weighed)).toEqual([]);
  });

  test('is a reason for departing from the findings, only where it departs', () => {
    const other = { ...written, reading: 'period-intact' };
    expect(must(of(other), weighed)).toEqual(['departure']);
    expect(must(of(other))).toEqual([]);
    expect(must(of({ ...other, departure: 'A bill of 1771.' }), weighed)).toEqual([]);
  });

  test('is what is new and why, from the second revision on', () => {
    const hash = 'a'.repeat(64);
    const first = {
      revision: 1,
      by: 'P. Halloway',
      on: '2026-11-20',
      at: '2026-11-20T10:00:00Z',
      manifestSha256: hash,
      pdfSha256: hash,
      documentSha256: hash,
      head: hash,
      count: 3,
      programVersion: '1',
      knowledgeVersion: '1',
      knowledgeSha256: hash,
    };
    const again = { issued: { 1: first } };
    expect(must(of(written, again), weighed)).toEqual(['is-new', 'why']);
    expect(must(of({ ...written, isNew: 'The blocks.', why: 'They were seen.' }, again), weighed)).toEqual(
      [],
    );
  });
});

describe('what is printed as not stated', () => {
  const ids = (...asked: Parameters<typeof missingForSigning>) =>
    missingForSigning(...asked).map((each) => each.id);

  test('is named while blank, with the day, the interest and the qualifications among it', () => {
    expect(ids(of(written), weighed)).toEqual([
      'client',
      'purpose',
      'may-rely',
      'examined-on',
      'effective-on',
      'interest',
      'examiner',
      'qualification',
      'findings',
      'plates',
      'limits',
    ]);
    const stated = { engagement: { interest: 'None.', examinerQualification: 'Twenty years.' } };
    expect(ids(of(written, stated), weighed)).not.toContain('interest');
    expect(ids(of(written, stated), weighed)).not.toContain('qualification');
  });

  test('is every contradiction that was not settled', () => {
    const open = { ...weighed, contradictions: [{ key: 'nail-cut@rail', name: 'Cut nails, rail' }] };
    expect(ids(of(written), open)).toContain('open:nail-cut@rail');
    const settled = { ...written, resolutions: { 'nail-cut@rail': 'A repair.' } };
    expect(ids(of(settled), open)).not.toContain('open:nail-cut@rail');
  });
});
