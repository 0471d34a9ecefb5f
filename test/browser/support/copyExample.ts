import type { TestServer } from './startServer.ts';

/** Makes a piece of one's own from a worked example, as "make a copy to edit" does, and answers its id. */
export async function copyExample(server: TestServer, example: string): Promise<string> {
  const answer = await fetch(`${server.address}api/pieces/${example}/copy`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      'x-underside': '1',
      origin: new URL(server.address).origin,
    },
    body: JSON.stringify({ device: 'test', who: 'A. Tester', at: '2026-11-25T10:00:00Z' }),
  });
  if (!answer.ok) throw new Error(`The example could not be copied: ${answer.status} ${await answer.text()}`);
  return ((await answer.json()) as { id: string }).id;
}
