import { writeFile } from 'node:fs/promises';
import { expect, it } from 'vitest';
import { examplePiece } from '../kits/opinions.ts';
import { temporaryFolder } from '../kits/temporaryFolder.ts';
import { testApp } from '../kits/testApp.ts';
import { unzip } from '../kits/unzip.ts';

it('hands a piece out in each open form as a zip, named by the address asked for', async () => {
  const piece = await examplePiece('armchair');
  const { get } = await testApp({ bases: new Map([[piece.id, piece as never]]) });
  const dir = await temporaryFolder();
  const filesOf = async (path: string) => {
    const answer = await get(`/api/pieces/${piece.id}/open/${path}`);
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/zip']);
    const file = `${dir}/${path.replace(/\W/g, '')}.zip`;
    await writeFile(file, Buffer.from(await answer.arrayBuffer()));
    return unzip(file);
  };
  expect([...(await filesOf('csv')).keys()]).toEqual(expect.arrayContaining(['piece.csv', 'findings.csv']));
  const base = encodeURIComponent('https://museum.example.org/7/');
  const records = await filesOf(`linked-art?base=${base}`);
  expect(JSON.parse(`${records.get('object.json')}`).id).toBe('https://museum.example.org/7/object');
  expect(JSON.parse(`${(await filesOf('iiif')).get('manifest.json')}`).type).toBe('Manifest');
});

it('says what it hands out, and refuses an address that is none', async () => {
  const piece = await examplePiece('armchair');
  const { get } = await testApp({ bases: new Map([[piece.id, piece as never]]) });
  const statuses = await Promise.all(
    ['none/open/csv', `${piece.id}/open/pictures`, `${piece.id}/open/iiif?base=javascript:x`].map(
      async (path) => (await get(`/api/pieces/${path}`)).status,
    ),
  );
  expect(statuses).toEqual([404, 404, 422]);
});
