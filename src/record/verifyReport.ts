import { existsSync } from 'node:fs';
import type { Fault } from '../ground/fault.ts';
import { counted } from '../ground/words.ts';
import { hashWords } from '../opinion/hashWords.ts';
import { type CheckedFile, checkFile } from '../opinion/pdf/checkLine.ts';
import type { EventLog } from './eventLog.ts';
import { CannotOpen } from './fault.ts';
import { sha256Of } from './issuedFolder.ts';
import { recordFile } from './openDataFolder.ts';
import { type RecordAside, recordAside } from './readOnly/recordAside.ts';
import { SqliteFault } from './sqlite/sqliteFault.ts';
import { sqliteLog } from './sqliteLog.ts';
import { verifyRecord } from './verify.ts';
import { headAt, issuedBy, type PlacedAct } from './verifyIssued.ts';

/** `issued`: the file that was signed, and the record stands by it; `refuted`: it is not so; `cannot-tell`: for want of the record. */
export type ReportVerdict = 'issued' | 'refuted' | 'cannot-tell';

/** What was found out of a file, in sentences for a person. */
export type ReportCheck = { verdict: ReportVerdict; lines: string[] };

/**
 * Whether a file is an opinion as it was issued.
 *
 * Without the record only the file's own check line can speak: it shows any change of a byte, and not who made the file.
 * With the record: whether exactly these bytes were signed, and whether the record still holds what it held then.
 *
 * @param bytes  the whole file
 * @param dir    the data folder of the record to ask
 */
export async function verifyReport(bytes: Uint8Array, dir: string): Promise<ReportCheck> {
  const checked = checkFile(bytes);
  const sha256 = sha256Of(bytes);
  const self = [...fileWords(checked), `SHA-256 of the file: ${sha256}`];
  if (!existsSync(recordFile(dir)))
    return {
      verdict: checked !== undefined && !checked.whole ? 'refuted' : 'cannot-tell',
      lines: [...self, `There is no record in ${dir} to ask whether it was issued: ${withoutRecord}`],
    };
  const record = readActs(dir);
  if (record === undefined)
    return {
      verdict: 'refuted',
      lines: [...self, 'The record can’t be read:', ...(await verifyRecord(dir)).faults.map(inWords)],
    };
  const { acts, recordId } = record;
  const match = acts.flatMap(({ event }) => {
    const issued = issuedBy(event);
    return issued?.pdfSha256 === sha256 ? [{ event, issued }] : [];
  })[0];
  const elsewhere = checked !== undefined && checked.line.record !== recordId;
  if (elsewhere && match === undefined)
    return {
      verdict: checked.whole ? 'cannot-tell' : 'refuted',
      lines: [
        ...self,
        `It says that it is of the record ${checked.line.record}, and the one in ${dir} is ${recordId}: ${withoutRecord}`,
      ],
    };
  if (match === undefined || checked === undefined)
    return {
      verdict: 'refuted',
      lines: [
        ...self,
        `The record in ${dir} never signed this file, byte for byte.`,
        ...nearest(acts, checked),
      ],
    };
  const { issued, event } = match;
  const { line } = checked;
  const kept = [
    `It is revision ${issued.revision} of ${event.piece}, as ${issued.by} signed it on ${issued.on}: the record in ${dir} has the hash of this file, byte for byte.`,
  ];
  const faults = [
    ...(elsewhere || headAt(acts, line.count) === line.head
      ? []
      : [
          `The head printed in it is not that of the record: of the first ${counted(line.count, 'act')} some were changed, removed or put in since it was signed.`,
        ]),
    ...(await verifyRecord(dir)).faults.map(inWords),
  ];
  return faults.length === 0
    ? {
        verdict: 'issued',
        lines: [
          ...self,
          ...kept,
          elsewhere
            ? `The record holds. The revision was signed in the record ${line.record} and brought in here, so the head printed in it can’t be compared.`
            : `The record holds, and its first ${counted(line.count, 'act')} come to the head printed in the file.`,
          withRecord,
        ],
      }
    : { verdict: 'refuted', lines: [...self, ...kept, 'But the record does not hold:', ...faults] };
}

const withoutRecord =
  'only the examiner’s record can tell. That a file is whole does not show who made it; anybody who knows how can make a whole file.';
const withRecord =
  'This shows that file and record agree. Whether the record itself was kept honestly it can’t show; a copy that somebody else has kept can.';

function fileWords(checked: CheckedFile | undefined): string[] {
  if (checked === undefined)
    return [
      'The file has no check line of an issued opinion: it is a draft, was saved anew by another program, was changed, or is not of Underside.',
    ];
  const { line, whole } = checked;
  const says = [
    `It says: revision ${line.revision} of ${line.piece}, made from ${counted(line.count, 'act')} of the record ${line.record}.`,
    `  Head of the record: ${hashWords(line.head)}`,
    `  Hash of what it rests on: ${hashWords(line.contents)}`,
  ];
  return whole
    ? ['The file is whole: no byte of it was changed since its check line was written.', ...says]
    : ['The file was changed since it was issued: its bytes do not come to its check line.', ...says];
}

/** Which file the record did sign where this one claims to be. */
function nearest(acts: readonly PlacedAct[], checked: CheckedFile | undefined): string[] {
  if (checked === undefined) return [];
  const { piece, revision } = checked.line;
  const issued = acts
    .filter(({ event }) => event.piece === piece)
    .map(({ event }) => issuedBy(event))
    .find((each) => each?.revision === revision);
  return issued === undefined
    ? [`It signed no revision ${revision} of ${piece}.`]
    : [`As revision ${revision} of ${piece} it signed a file of SHA-256 ${issued.pdfSha256}.`];
}

/** All acts of a record in their order, or undefined where the file can't be read to its end. */
function readActs(dir: string): { acts: PlacedAct[]; recordId: string } | undefined {
  let aside: RecordAside | undefined;
  let log: EventLog | undefined;
  try {
    aside = recordAside(dir);
    const open = sqliteLog(aside.file, { readOnly: true });
    log = open;
    const acts = open.pieces().flatMap((piece) => open.ofPiece(piece));
    return { acts: acts.sort((a, b) => a.position - b.position), recordId: open.recordId };
  } catch (error) {
    if (error instanceof CannotOpen || error instanceof SqliteFault || error instanceof SyntaxError)
      return undefined;
    throw error;
  } finally {
    log?.close();
    aside?.remove();
  }
}

function inWords({ path, message }: Fault): string {
  return `${path}: ${message}`;
}
