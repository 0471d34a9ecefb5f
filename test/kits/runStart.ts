import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Runs `npm start`'s program to its end; for starts that are to be refused. */
export function runStart(...args: string[]): Promise<{ code: number | null; printed: string }> {
  const child = spawn(process.execPath, ['bin/start.mjs', '--no-open', ...args], { cwd: root });
  let printed = '';
  child.stdout.on('data', (chunk) => {
    printed += chunk;
  });
  child.stderr.on('data', (chunk) => {
    printed += chunk;
  });
  // Lines of the builder only say that another program was being started from this folder too.
  const ours = () => printed.replace(/^(Making the|Waiting for another build|\s+\().*\n/gm, '').trim();
  return new Promise((resolve) => child.once('close', (code) => resolve({ code, printed: ours() })));
}
