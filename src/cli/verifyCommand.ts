import type { Verification } from '../record/verify.ts';
import type { Terminal } from './terminal.ts';

/** `verify`: whether the record is as it was written. Returns 0 if it is, 1 if not, 2 if it can't be told. */
export async function runVerify(
  args: readonly string[],
  usualDataFolder: string,
  terminal: Terminal,
): Promise<number> {
  const [option, folder, ...more] = args;
  if (option !== undefined && (option !== '--data' || folder === undefined || more.length > 0)) {
    terminal.err('Write verify alone, or verify --data and the folder of the record.');
    return 2;
  }
  const { verifyRecord } = await import('../record/verify.ts');
  const found = await verifyRecord(folder ?? usualDataFolder);
  if (found.faults.some((each) => unreadable.includes(each.code))) {
    for (const { message } of found.faults) terminal.err(message);
    return 2;
  }
  for (const line of verificationLines(found)) terminal.out(line);
  return found.ok ? 0 : 1;
}

/** Faults that say nothing of the record but that it could not be looked at. */
const unreadable = ['verify.no-record'];

/** What a check of the record found, in lines a person can read. */
export function verificationLines(found: Verification): string[] {
  const counted = `${count(found.events, 'act')} on ${count(found.pieces, 'piece')}, ${count(found.photos, 'photo')}`;
  const heads = found.devices.map(
    ({ device, events, hash }) => `  ${device}: ${count(events, 'act')}, last hash ${hash}`,
  );
  if (!found.ok) {
    const faults = found.faults.map(({ path, message }) => `  ${path}: ${message}`);
    return [`The record does not hold (${counted}):`, ...faults, ...found.remarks, ...heads];
  }
  return [`The record is as it was written: ${counted}.`, ...found.remarks, ...heads];
}

function count(number: number, noun: string): string {
  return `${number} ${noun}${number === 1 ? '' : 's'}`;
}
