import { createHash, createPrivateKey, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { writeDurably } from '../../record/backup/durableFiles.ts';
import { accessFolder } from '../access/accessFile.ts';
import { bytesOfPem, type Identity, makeAuthority, makeServerCertificate } from './certificate.ts';

const dayMs = 24 * 3_600_000;

/**
 * How long certificates are good for, and when a new one is made. The server's stays far below what browsers accept: a short one is renewed
 * by itself and needs nothing of the devices, which trust the authority.
 *
 * @source Apple, "Requirements for trusted certificates in iOS 13 and macOS 10.15": at most 825 days; CA/Browser Forum ballot SC-081: 200 days
 *   from March 2026, 100 from March 2027 for public authorities (both from memory)
 */
const authorityDays = 3650;
const serverDays = 90;
const renewDaysBefore = 30;
/** A device whose clock runs slow must not take a new certificate for one that is not good yet. */
const dayBefore = dayMs;

/** What a device is to trust, and the certificate that this machine shows it. */
export type Authority = {
  /** The authority's certificate, as PEM and as bytes. */
  pem: string;
  der: Uint8Array;
  /** SHA-256 of those bytes, in pairs of hex: what a person compares. */
  fingerprint: string;
  ends: Date;
  /** A certificate for these names, made anew where the one at hand is not good for them or not for long. */
  serverFor(names: readonly string[]): Promise<Identity>;
};

/** The authority of a data folder, made on first use. Its key is kept in the folder, for its owner only. */
export async function openAuthority(dataDir: string, now: () => number = Date.now): Promise<Authority> {
  const files = (name: string) => ({
    key: join(accessFolder(dataDir), `${name}.key.pem`),
    certificate: join(accessFolder(dataDir), `${name}.certificate.pem`),
  });
  const span = (days: number) => ({ from: new Date(now() - dayBefore), to: new Date(now() + days * dayMs) });
  const kept = readIdentity(files('authority'));
  const authority =
    kept !== undefined && isGood(kept, 0, now())
      ? kept
      : await keepIdentity(
          files('authority'),
          await makeAuthority(authorityName(new Date(now())), span(authorityDays)),
        );
  const der = new Uint8Array(bytesOfPem(authority.certificate));
  return {
    pem: authority.certificate,
    der,
    fingerprint: pairs(createHash('sha256').update(der).digest('hex')),
    ends: new Date(new X509Certificate(authority.certificate).validTo),
    async serverFor(names) {
      const at = readIdentity(files('server'));
      if (at !== undefined && isGood(at, renewDaysBefore, now()) && isFor(at, names, authority)) return at;
      return keepIdentity(files('server'), await makeServerCertificate(names, span(serverDays), authority));
    },
  };
}

/** How the authority is called where a device lists what it trusts: after the machine and the day, so that two are told apart. */
function authorityName(day: Date): string {
  return `Underside on ${hostname().split('.')[0]}, ${day.toISOString().slice(0, 10)}`;
}

function readIdentity(files: Identity): Identity | undefined {
  try {
    return { key: readFileSync(files.key, 'utf8'), certificate: readFileSync(files.certificate, 'utf8') };
  } catch {
    return undefined;
  }
}

/** The key first: a certificate without its key is made anew, and a key without its certificate is of no use to anybody. */
async function keepIdentity(files: Identity, made: Identity): Promise<Identity> {
  await writeDurably(files.key, made.key);
  await writeDurably(files.certificate, made.certificate);
  return made;
}

function isGood({ key, certificate }: Identity, daysLeft: number, now: number): boolean {
  try {
    const read = new X509Certificate(certificate);
    const isIts = read.checkPrivateKey(createPrivateKey(key));
    return isIts && Date.parse(read.validFrom) <= now && Date.parse(read.validTo) > now + daysLeft * dayMs;
  } catch {
    return false;
  }
}

function isFor({ certificate }: Identity, names: readonly string[], authority: Identity): boolean {
  const read = new X509Certificate(certificate);
  const by = new X509Certificate(authority.certificate);
  const isNamed = (name: string) => (isIP(name) ? read.checkIP(name) : read.checkHost(name)) !== undefined;
  return read.verify(by.publicKey) && names.every(isNamed);
}

function pairs(hex: string): string {
  return (hex.toUpperCase().match(/../g) ?? []).join(' ');
}
