/**
 * Runs many commands of the built terminal program in one process: on standard input a JSON list of `{ args, input }`, on
 * standard output a list of what each ended with, `{ code, out, err }`.
 */
import { Readable } from 'node:stream';
import { text } from 'node:stream/consumers';
import { build } from '../../scripts/build.mjs';

const commands = JSON.parse(await text(process.stdin));
await build(() => {}, ['knowledge', 'programs']);
const { runFromTerminal } = await import('../../dist/cli.js');
const say = process.stdout.write.bind(process.stdout);
const ended = [];
for (const { args, input } of commands) {
  const out = [];
  const err = [];
  process.stdout.write = (words) => out.push(words) > 0;
  process.stderr.write = (words) => err.push(words) > 0;
  Object.defineProperty(process, 'stdin', { value: Readable.from([input]), configurable: true });
  const code = await runFromTerminal(args, { usualDataFolder: 'none' });
  ended.push({ code, out: out.join(''), err: err.join('') });
}
say(JSON.stringify(ended));
