import { openDB } from 'idb';
import { challengeText, pairingText } from '../../ground/signedTexts.ts';
import type { Asked } from '../record/pieceServer.ts';
import { askAccess } from './askAccess.ts';

/** What this browser was paired with: its key can sign, and can't be read out of it. */
type KeptDevice = { id: string; name: string; keys: CryptoKeyPair };

const algorithm = { name: 'ECDSA', namedCurve: 'P-256' };

/** Whether this page may have a key at all: over https that is trusted, or on the computer itself. */
export function canHaveKey(): boolean {
  return window.isSecureContext && typeof crypto.subtle === 'object';
}

/**
 * Pairs this device: makes a key that stays here, and hands in its public half with the code.
 *
 * @param code  as it stands on the office screen
 * @param name  what the device is to be called
 */
export async function pairDevice(code: string, name: string): Promise<Asked<{ id: string; name: string }>> {
  const keys = await crypto.subtle.generateKey(algorithm, false, ['sign', 'verify']);
  const publicKey = base64url(await crypto.subtle.exportKey('raw', keys.publicKey));
  const plain = code.toUpperCase().replaceAll(/[^0-9A-Z]/g, '');
  const signature = await sign(keys.privateKey, pairingText(plain, publicKey));
  const asked = await askAccess<{ id: string; name: string }>('pair', {
    code: plain,
    name,
    publicKey,
    signature,
  });
  if (asked.came === 'answer') await keepDevice({ ...asked.answer, keys });
  return asked;
}

/** Signs in by the key of this device; undefined where it was never paired. */
export async function signInByKey(): Promise<Asked<{ name: string }> | undefined> {
  const device = canHaveKey() ? await keptDevice() : undefined;
  if (device === undefined) return undefined;
  const asked = await askAccess<{ challenge: string }>('challenge', { device: device.id });
  if (asked.came !== 'answer') return asked;
  const { challenge } = asked.answer;
  const signature = await sign(device.keys.privateKey, challengeText(device.id, challenge));
  return askAccess('device', { device: device.id, challenge, signature });
}

async function sign(key: CryptoKey, text: string): Promise<string> {
  return base64url(
    await crypto.subtle.sign({ name: 'ECDSA', hash: 'SHA-256' }, key, new TextEncoder().encode(text)),
  );
}

function base64url(bytes: ArrayBuffer): string {
  const text = btoa(String.fromCharCode(...new Uint8Array(bytes)));
  return text.replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

function openStore() {
  return openDB('underside-device', 1, {
    upgrade(fresh) {
      fresh.createObjectStore('device');
    },
  });
}

async function keepDevice(device: KeptDevice): Promise<void> {
  const store = await openStore();
  await store.put('device', device, 'own');
  store.close();
}

/** A browser without a store has no device either. */
async function keptDevice(): Promise<KeptDevice | undefined> {
  try {
    const store = await openStore();
    const kept: KeptDevice | undefined = await store.get('device', 'own');
    store.close();
    return kept;
  } catch {
    return undefined;
  }
}
