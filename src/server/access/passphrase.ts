import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { done, type Outcome, refuse } from '../../ground/fault.ts';

/** The work of scrypt: N rounds over 128 · N · r bytes, p times. */
export type Cost = { N: number; r: number; p: number };

/**
 * How much work one guess takes: 128 MiB of memory for about half a second.
 *
 * @source OWASP, Password Storage Cheat Sheet, scrypt: "N=2^17 (128 MiB), r=8 (1024 bytes), p=1" (from memory)
 */
export const usualCost: Cost = { N: 2 ** 17, r: 8, p: 1 };

/** @source NIST SP 800-63B-4, 3.1.1.2: at least 15 characters where nothing else is asked for (from memory) */
const fewestCharacters = 15;
const mostCharacters = 200;

/** A passphrase as it is kept: what came of it, and the work it took, so that the work can be raised later. */
export type KeptPassphrase = Cost & { salt: string; hash: string };

/** The passphrase as it is to be kept, or why it won't do. */
export async function keepPassphrase(passphrase: string, cost: Cost): Promise<Outcome<KeptPassphrase>> {
  const text = passphrase.normalize('NFKC');
  const length = [...text].length;
  if (length < fewestCharacters)
    return refuse(
      'access.passphrase-short',
      `Choose at least ${fewestCharacters} characters: four or five words that don’t belong together are easy to keep in mind and hard to guess.`,
      'passphrase',
    );
  if (length > mostCharacters)
    return refuse('access.passphrase-long', `Choose at most ${mostCharacters} characters.`, 'passphrase');
  if (new Set(text.toLowerCase()).size < 6)
    return refuse(
      'access.passphrase-plain',
      'This repeats a few characters and would soon be guessed: choose four or five words.',
      'passphrase',
    );
  const salt = randomBytes(16);
  const hash = await derive(text, salt, cost);
  return done({ ...cost, salt: salt.toString('base64url'), hash: hash.toString('base64url') });
}

/** Whether it is the passphrase that was kept; takes as long either way. */
export async function isPassphrase(passphrase: string, kept: KeptPassphrase): Promise<boolean> {
  if (passphrase.length > 4 * mostCharacters) return false;
  const hash = await derive(passphrase.normalize('NFKC'), Buffer.from(kept.salt, 'base64url'), kept);
  const wanted = Buffer.from(kept.hash, 'base64url');
  return hash.length === wanted.length && timingSafeEqual(hash, wanted);
}

function derive(text: string, salt: Buffer, { N, r, p }: Cost): Promise<Buffer> {
  return new Promise((resolve, reject) =>
    scrypt(text, salt, 32, { N, r, p, maxmem: 256 * N * r }, (error, hash) =>
      error === null ? resolve(hash) : reject(error),
    ),
  );
}
