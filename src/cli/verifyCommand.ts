import { readFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { counted } from '../ground/words.ts';
import type { NotedHead, Verification } from '../record/verify.ts';
import type { Terminal } from './terminal.ts';

/** `verify`: whether the record is as it was written. Returns 0 if it is, 1 if not, 2 if it can't be told. */
export async function runVerify(
  args: readonly string[],
  usualDataFolder: string,
  terminal: Terminal,
): Promise<number> {
  const [first] = args;
  if (first !== undefined && !first.startsWith('-')) return runVerifyReport(args, usualDataFolder, terminal);
  const asked = readArgs(args);
  if (asked === undefined) {
    terminal.err(use);
    return 2;
  }
  const { verifyRecord } = await import('../record/verify.ts');
  const found = await verifyRecord(asked.folder ?? usualDataFolder, asked.noted);
  if (found.faults.some((each) => unreadable.includes(each.code))) {
    for (const { message } of found.faults) terminal.err(message);
    return 2;
  }
  for (const line of verificationLines(found)) terminal.out(line);
  return found.ok ? 0 : 1;
}

/** `verify REPORT.pdf`: whether a file is the opinion that was issued. Returns 0 if so, 1 if not, 2 if it can't be told. */
async function runVerifyReport(
  args: readonly string[],
  usualDataFolder: string,
  terminal: Terminal,
): Promise<number> {
  const [file = '', option, folder, ...more] = args;
  const named = option === '--record' || option === '--data';
  if (more.length > 0 || (option !== undefined && (!named || folder === undefined))) {
    terminal.err(
      'Write verify and the file of the opinion, and if you like --record and the folder of the record.',
    );
    return 2;
  }
  const bytes = await readFile(file).catch(() => undefined);
  if (bytes === undefined || !bytes.subarray(0, 5).equals(Buffer.from('%PDF-'))) {
    terminal.err(bytes === undefined ? `There is no file ${file} that can be read.` : `${file} is no PDF.`);
    return 2;
  }
  const { verifyReport } = await import('../record/verifyReport.ts');
  const { verdict, lines } = await verifyReport(bytes, folder ?? usualDataFolder);
  for (const line of lines) terminal.out(line);
  return verdict === 'issued' ? 0 : verdict === 'refuted' ? 1 : 2;
}

const use =
  'Write verify alone, verify --data and the folder of the record, or verify and the file of an opinion; --head HASH, and --count with the number of acts, hold the record against a head that was noted.';

function readArgs(args: readonly string[]): { folder?: string; noted?: NotedHead } | undefined {
  try {
    const options = {
      data: { type: 'string' },
      head: { type: 'string' },
      count: { type: 'string' },
    } as const;
    const { values } = parseArgs({ args: [...args], options });
    const { data, head, count } = values;
    if (head === undefined && count !== undefined) return undefined;
    if (head !== undefined && !/^[0-9a-f]{64}$/.test(head)) return undefined;
    if (count !== undefined && !/^\d+$/.test(count)) return undefined;
    if (data === '') return undefined;
    return {
      ...(data === undefined ? {} : { folder: data }),
      ...(head === undefined
        ? {}
        : { noted: { hash: head, ...(count === undefined ? {} : { count: Number(count) }) } }),
    };
  } catch {
    return undefined;
  }
}

/** Faults that say nothing of the record but that it could not be looked at. */
const unreadable = ['verify.no-record', 'verify.unreadable'];

/** What a check of the record found, in lines a person can read. */
export function verificationLines(found: Verification): string[] {
  const whole = `${counted(found.events, 'act')} on ${counted(found.pieces, 'piece')}, ${counted(found.photos, 'photo')}${found.revisions === 0 ? '' : `, ${counted(found.revisions, 'signed revision')}`}`;
  const heads = found.devices.map(
    ({ device, events, hash }) => `  ${device}: ${counted(events, 'act')}, last hash ${hash}`,
  );
  heads.unshift(
    ...(found.recordId === '' ? [] : [`  Record ${found.recordId}`]),
    `  Head after ${counted(found.head.count, 'act')}: ${found.head.hash}`,
  );
  if (!found.ok) {
    const faults = found.faults.map(({ path, message }) => `  ${path}: ${message}`);
    return [`The record does not hold (${whole}):`, ...faults, ...found.remarks, ...heads];
  }
  return [`The record is as it was written: ${whole}.`, ...found.remarks, ...heads];
}
