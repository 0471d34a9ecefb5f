import { join } from 'node:path';
import type { RecordedEvent } from '../../src/piece/event.ts';
import { openSqlite } from '../../src/record/sqlite/openSqlite.ts';
import vectors from '../reference/recordVectors.json' with { type: 'json' };

/** The acts of the record below, as they were kept. */
export const keptActs = vectors.chain.acts.map((one) => one.kept as unknown as RecordedEvent);

/** The tables as the first version made them: written out here, so that no later version can change them. */
const tables = `
  CREATE TABLE events (
    position INTEGER PRIMARY KEY AUTOINCREMENT,
    id       TEXT NOT NULL UNIQUE,
    piece    TEXT NOT NULL,
    device   TEXT NOT NULL,
    seq      INTEGER NOT NULL CHECK (seq > 0),
    hash     TEXT NOT NULL CHECK (length(hash) = 64),
    body     TEXT NOT NULL CHECK (json_valid(body)),
    UNIQUE (device, seq)
  ) STRICT;
  CREATE INDEX events_of_piece ON events (piece, position);
  CREATE TRIGGER events_are_new BEFORE INSERT ON events
    WHEN EXISTS (SELECT 1 FROM events WHERE position = NEW.position OR id = NEW.id OR (device = NEW.device AND seq = NEW.seq))
    BEGIN SELECT RAISE(ABORT, 'an event is never put in the place of another'); END;
  CREATE TRIGGER events_stay BEFORE UPDATE ON events BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;
  CREATE TRIGGER events_are_kept BEFORE DELETE ON events BEGIN SELECT RAISE(ABORT, 'an event is never removed'); END;
`;

/** Writes a record.db into a folder as the first version of the program left it: three acts of two devices. */
export function writeFirstVersionRecord(dir: string): void {
  const database = openSqlite(join(dir, 'record.db'));
  database.pragma('journal_mode = WAL');
  database.exec(tables);
  database.pragma('user_version = 1');
  const insert = database.prepare(
    'INSERT INTO events (id, piece, device, seq, hash, body) VALUES (?, ?, ?, ?, ?, ?)',
  );
  for (const one of keptActs)
    insert.run(one.id, one.piece, one.device, one.seq, one.hash, JSON.stringify(one));
  database.close();
}
