import { describe, expect, test } from 'vitest';
import { askServer } from './pieceServer.ts';

const answering = (status: number, body: unknown): typeof fetch => {
  return async () => new Response(typeof body === 'string' ? body : JSON.stringify(body), { status });
};

describe('what came of asking', () => {
  test.each([
    [500, { faults: [{ code: 'server.fault', message: 'Inside.' }] }],
    [403, { faults: [{ code: 'server.other-page', message: 'No.' }] }],
    [429, ''],
    [422, { faults: [{ code: 'record.disk-full', message: 'The disk is full.' }] }],
    [403, { faults: [{ code: 'record.read-only', message: 'This record is open read-only.' }] }],
    [422, { faults: [{ code: 'record.could-not-write', message: 'Locked.' }] }],
  ])('%s %j is not a refusal of what was sent: it is kept and sent again', async (status, body) => {
    expect(await askServer(answering(status, body), '/x')).toEqual({ came: 'nothing' });
  });

  test('a refusal comes with its words, or with its number where it has none', async () => {
    const told = { faults: [{ code: 'record.does-not-fit', message: 'Does not fit.' }] };
    expect(await askServer(answering(422, told), '/x')).toMatchObject({
      came: 'refusal',
      message: 'Does not fit.',
    });
    const readOnly = { faults: [{ code: 'record.example-is-read-only', message: 'They stay as they are.' }] };
    expect(await askServer(answering(403, readOnly), '/x')).toMatchObject({ came: 'refusal', status: 403 });
    expect(await askServer(answering(404, '<p>'), '/x')).toMatchObject({
      came: 'refusal',
      message: 'The record refused it (404).',
    });
  });

  test('nobody there, and an answer that is cut short', async () => {
    const gone: typeof fetch = () => Promise.reject(new TypeError('no route'));
    expect(await askServer(gone, '/x')).toEqual({ came: 'nothing' });
    expect(await askServer(answering(200, '{"piece":'), '/x')).toEqual({ came: 'nothing' });
  });
});
