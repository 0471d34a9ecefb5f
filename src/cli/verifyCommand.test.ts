import { expect, test } from 'vitest';
import { verificationLines } from './verifyCommand.ts';

const found = {
  ok: true,
  recordId: '5f0c',
  head: { count: 12, hash: 'def' },
  events: 12,
  pieces: 1,
  photos: 2,
  revisions: 0,
  devices: [{ device: 'tablet', events: 12, hash: 'abc' }],
  faults: [],
  remarks: ['No piece names the photo 123: it was sent, and its act never came.'],
};

test('a record that holds is said in one line, with the last hash of each device to be noted', () => {
  expect(verificationLines(found)).toEqual([
    'The record is as it was written: 12 acts on 1 piece, 2 photos.',
    ...found.remarks,
    '  Record 5f0c',
    '  Head after 12 acts: def',
    '  tablet: 12 acts, last hash abc',
  ]);
});

test('a record that does not hold says where', () => {
  const faults = [
    { code: 'verify.act-changed', path: 'event 3 (x)', message: 'This act is not as it was recorded.' },
  ];
  expect(verificationLines({ ...found, ok: false, faults, remarks: [] })).toEqual([
    'The record does not hold (12 acts on 1 piece, 2 photos):',
    '  event 3 (x): This act is not as it was recorded.',
    '  Record 5f0c',
    '  Head after 12 acts: def',
    '  tablet: 12 acts, last hash abc',
  ]);
});
