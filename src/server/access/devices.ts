import { createHash, randomBytes, randomInt, randomUUID, timingSafeEqual, webcrypto } from 'node:crypto';
import { done, type Outcome, refuse } from '../../ground/fault.ts';
import { challengeText, pairingText } from '../../ground/signedTexts.ts';
import type { AccessFile, Device } from './accessFile.ts';

/** How long a code for pairing and a challenge are good for. */
const codeLastsMs = 10 * 60_000;
const challengeLastsMs = 2 * 60_000;
const mostChallenges = 500;

/** Letters and digits that are not taken for one another when they are read off a screen. */
const codeSigns = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
/** 30^12 is 59 bits: with ten minutes and the waits after wrong tries it can't be guessed. */
const codeLength = 12;

/** A code that lets one device in, once. */
export type PairingCode = { code: string; ends: number };

/** What a device hands in to be paired: the code, what it is to be called, its public key, and both signed by that key. */
export type PairingRequest = { code: string; name: string; publicKey: string; signature: string };

/** The devices that were paired, each with a key that never leaves it. */
export type Devices = {
  list(): readonly Device[];
  find(id: string): Device | undefined;
  /** A new code; one that was shown before is worth nothing from then on. */
  newCode(): PairingCode;
  dropCode(): void;
  pair(request: PairingRequest): Promise<Outcome<Device>>;
  /** Something to sign, good for one try. */
  challenge(id: string): string;
  /** The device, where it signed the challenge with its key. */
  answer(id: string, challenge: string, signature: string): Promise<Outcome<Device>>;
  /** Shuts a device out at once: its sessions end with it. */
  shutOut(id: string): Promise<Outcome<undefined>>;
};

export function openDevices(file: AccessFile, now: () => number): Devices {
  const held: { code?: { hash: Buffer; ends: number } } = {};
  const challenges = new Map<string, { device: string; ends: number }>();
  const find = (id: string) => file.state.devices.find((one) => one.id === id);
  return {
    list: () => file.state.devices,
    find,
    newCode() {
      const code = Array.from({ length: codeLength }, () => codeSigns[randomInt(codeSigns.length)]).join('');
      held.code = { hash: hashOf(code), ends: now() + codeLastsMs };
      return { code, ends: held.code.ends };
    },
    dropCode() {
      delete held.code;
    },
    async pair({ code, name, publicKey, signature }) {
      const typed = plainCode(code);
      const isRight = held.code !== undefined && timingSafeEqual(hashOf(typed), held.code.hash);
      if (!isRight || held.code === undefined || now() >= held.code.ends) return wrongCode();
      const called = name.normalize('NFC').trim().replaceAll(/\s+/g, ' ');
      const named = checkName(called, file.state.devices);
      if (!named.ok) return named;
      if (!(await isSigned(publicKey, signature, pairingText(typed, publicKey)))) return badKey();
      // Between the look at the code and here others may have used it.
      if (held.code === undefined || !timingSafeEqual(hashOf(typed), held.code.hash)) return wrongCode();
      delete held.code;
      const device: Device = { id: randomUUID(), name: called, publicKey, paired: now(), seen: now() };
      await file.change((state) => ({ ...state, devices: [...state.devices, device] }));
      return done(device);
    },
    challenge(id) {
      for (const [old, { ends }] of challenges) if (now() >= ends) challenges.delete(old);
      const [oldest] = challenges.keys();
      if (challenges.size >= mostChallenges && oldest !== undefined) challenges.delete(oldest);
      const challenge = randomBytes(32).toString('base64url');
      challenges.set(challenge, { device: id, ends: now() + challengeLastsMs });
      return challenge;
    },
    async answer(id, challenge, signature) {
      const asked = challenges.get(challenge);
      // Gone with the first try, right or wrong: what was overheard can't be handed in again.
      challenges.delete(challenge);
      const device = find(id);
      if (device === undefined) return notPaired();
      if (asked === undefined || asked.device !== id || now() >= asked.ends)
        return refuse('access.challenge-over', 'This took too long, or was tried before: it is tried anew.');
      if (!(await isSigned(device.publicKey, signature, challengeText(id, challenge)))) return badKey();
      // It may have been shut out meanwhile.
      const still = find(id);
      if (still === undefined || still.shutOut !== undefined) return shutOutFault();
      const seen = (one: Device) => (one.id === id ? { ...one, seen: now() } : one);
      await file.change((state) => ({ ...state, devices: state.devices.map(seen) }));
      return done(still);
    },
    async shutOut(id) {
      if (find(id) === undefined) return notPaired();
      const out = (one: Device) => (one.id === id ? { ...one, shutOut: one.shutOut ?? now() } : one);
      await file.change((state) => ({
        ...state,
        devices: state.devices.map(out),
        sessions: state.sessions.filter(({ device }) => device !== id),
      }));
      return done(undefined);
    },
  };
}

/** A code as it was made, however it was typed: with gaps, in small letters. */
function plainCode(typed: string): string {
  return typed.toUpperCase().replaceAll(/[^0-9A-Z]/g, '');
}

function checkName(name: string, devices: readonly Device[]): Outcome<undefined> {
  if (!/^\P{C}{1,60}$/u.test(name))
    return refuse('access.name', 'Give the device a name of at most 60 letters: “Kitchen tablet”.', 'name');
  const same = devices.find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (same === undefined) return done(undefined);
  return refuse(
    'access.name-used',
    `A device was called “${same.name}” before, and the history names it so: choose another name.`,
    'name',
  );
}

/**
 * Whether a text was signed by the key: ECDSA over P-256 with SHA-256, as browsers make it.
 *
 * @source W3C, Web Cryptography API, 23 (ECDSA: r and s, one after the other)
 */
async function isSigned(publicKey: string, signature: string, text: string): Promise<boolean> {
  try {
    const algorithm = { name: 'ECDSA', namedCurve: 'P-256' };
    const raw = Buffer.from(publicKey, 'base64url');
    const key = await webcrypto.subtle.importKey('raw', raw, algorithm, false, ['verify']);
    return await webcrypto.subtle.verify(
      { name: 'ECDSA', hash: 'SHA-256' },
      key,
      Buffer.from(signature, 'base64url'),
      new TextEncoder().encode(text),
    );
  } catch {
    return false;
  }
}

function hashOf(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}

function wrongCode(): ReturnType<typeof refuse> {
  return refuse(
    'access.wrong-code',
    'This code is not, or no longer, good: it is good for ten minutes and for one device. Ask for a new one on the Devices page of the office computer.',
    'code',
  );
}

function badKey(): ReturnType<typeof refuse> {
  return refuse(
    'access.bad-key',
    'The key of this device does not fit: pair the device anew, with a new code.',
  );
}

function notPaired(): ReturnType<typeof refuse> {
  return refuse('access.not-paired', 'This device is not paired with this record: pair it with a code.');
}

function shutOutFault(): ReturnType<typeof refuse> {
  return refuse(
    'access.shut-out',
    'This device was shut out on the office computer. What was entered on it stays on it; to hand that over, pair it anew.',
  );
}
