/** The primary result codes that the record tells apart. Source: SQLite, “Result and Error Codes”. */
const names: Record<number, string> = {
  5: 'SQLITE_BUSY',
  6: 'SQLITE_LOCKED',
  8: 'SQLITE_READONLY',
  10: 'SQLITE_IOERR',
  11: 'SQLITE_CORRUPT',
  13: 'SQLITE_FULL',
  14: 'SQLITE_CANTOPEN',
  19: 'SQLITE_CONSTRAINT',
  26: 'SQLITE_NOTADB',
};

/** What SQLite refused, whichever driver spoke to it. `code` is the name of the primary result code. */
export class SqliteFault extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
    this.name = 'SqliteFault';
  }
}

/** Runs a piece of work on a database; what SQLite refuses comes out as a SqliteFault, anything else as it is. */
export function tellingFaults<Value>(work: () => Value): Value {
  try {
    return work();
  } catch (error) {
    throw asFault(error);
  }
}

/** Node gives the extended code as a number, whose low byte is the primary one; the package gives its name. */
function asFault(error: unknown): unknown {
  const { code, errcode, message } = error as { code?: unknown; errcode?: unknown; message?: string };
  if (typeof errcode === 'number')
    return new SqliteFault(names[errcode & 0xff] ?? 'SQLITE_ERROR', message ?? '');
  if (typeof code !== 'string' || !code.startsWith('SQLITE_')) return error;
  return new SqliteFault(code.split('_').slice(0, 2).join('_'), message ?? '');
}
