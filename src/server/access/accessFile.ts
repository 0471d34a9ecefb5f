import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { writeDurably } from '../../record/backup/durableFiles.ts';
import { takingTurns } from '../../record/turns.ts';

const session = z.strictObject({
  id: z.uuid(),
  /** SHA-256 of the token in the cookie: who reads this file can't sign in with it. */
  tokenHash: z.string().regex(/^[0-9a-f]{64}$/),
  /** The paired device it belongs to; none where somebody signed in by the passphrase. */
  device: z.uuid().optional(),
  /** Milliseconds since 1970. */
  begun: z.number(),
  seen: z.number(),
  ends: z.number(),
  /** What the browser calls itself, to tell sessions apart. */
  browser: z.string().max(200),
});
export type Session = z.infer<typeof session>;

const device = z.strictObject({
  id: z.uuid(),
  name: z.string().min(1).max(60),
  /** A point of P-256, not compressed, in base64url. */
  publicKey: z.string().max(200),
  paired: z.number(),
  seen: z.number(),
  /** When it was shut out; its name is never given to another. */
  shutOut: z.number().optional(),
});
export type Device = z.infer<typeof device>;

const accessState = z.strictObject({
  passphrase: z
    .strictObject({
      N: z.number(),
      r: z.number(),
      p: z.number(),
      salt: z.string(),
      hash: z.string(),
    })
    .optional(),
  sessions: z.array(session).default([]),
  devices: z.array(device).default([]),
});
export type AccessState = z.infer<typeof accessState>;

/** Who may come in over the network: kept in the data folder, and nowhere in a back-up. */
export type AccessFile = {
  readonly state: AccessState;
  /** Changes it, and answers once the change is on the disk. */
  change(make: (state: AccessState) => AccessState): Promise<void>;
  /** Whether what was there could not be read, so that nobody is let in until a passphrase is chosen anew. */
  unreadable: boolean;
};

/** The folder of keys and of who may come in. */
export const accessFolder = (dataDir: string) => join(dataDir, 'access');

export function openAccessFile(dataDir: string): AccessFile {
  const path = join(accessFolder(dataDir), 'access.json');
  const read = readState(path);
  const held = { state: read ?? accessState.parse({}) };
  const inTurn = takingTurns(1);
  return {
    get state() {
      return held.state;
    },
    unreadable: read === undefined,
    change(make) {
      // In memory first: who is shut out is out at once, whatever the disk says.
      held.state = make(held.state);
      return inTurn(() => writeDurably(path, `${JSON.stringify(held.state, null, 2)}\n`));
    },
  };
}

/** @returns undefined where it can't be read: then nobody is let in */
function readState(path: string): AccessState | undefined {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOENT' ? accessState.parse({}) : undefined;
  }
  try {
    return accessState.parse(JSON.parse(text));
  } catch {
    return undefined;
  }
}
