/**
 * Writes what follows from the table of rooms (lint/rooms.ts): lint/rooms.json, which the linter's settings take in,
 * and the folders of tsconfig.pure.json. Run `npx tsx scripts/roomRules.ts` after changing the table.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { lintRules, pureFolders } from '../lint/roomRules.ts';
import { rooms } from '../lint/rooms.ts';

const compiler = 'tsconfig.pure.json';
const settings = JSON.parse(await readFile(compiler, 'utf8'));
await writeFile('lint/rooms.json', `${JSON.stringify(lintRules(rooms), null, 2)}\n`);
await writeFile(compiler, `${JSON.stringify({ ...settings, include: pureFolders(rooms) }, null, 2)}\n`);
console.log('Wrote lint/rooms.json and tsconfig.pure.json: run npm run format.');
