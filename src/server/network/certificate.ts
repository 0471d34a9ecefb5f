import { randomBytes, webcrypto } from 'node:crypto';
import { isIPv4, isIPv6 } from 'node:net';
import { BitString, Integer, OctetString, Utf8String } from 'asn1js';
import {
  AttributeTypeAndValue,
  AuthorityKeyIdentifier,
  BasicConstraints,
  Certificate,
  Extension,
  ExtKeyUsage,
  GeneralName,
  GeneralNames,
  GeneralSubtree,
  NameConstraints,
} from 'pkijs';
import { localRanges } from './ownAddresses.ts';

/** A key and its certificate, as PEM. */
export type Identity = { key: string; certificate: string };

/** From when to when. */
export type Span = { from: Date; to: Date };

const algorithm = { name: 'ECDSA', namedCurve: 'P-256', hash: 'SHA-256' };

/**
 * An authority of this installation's own. It can vouch for nothing but names that end in .local and addresses of local networks:
 * whoever stole its key could not pass for a bank with it.
 *
 * @source RFC 5280, 4.2.1.3 (key usage), 4.2.1.9 (basic constraints), 4.2.1.10 (name constraints)
 */
export async function makeAuthority(name: string, span: Span): Promise<Identity> {
  const keys = await makeKeys();
  const certificate = begin(name, name, span);
  await certificate.subjectPublicKeyInfo.importKey(keys.publicKey);
  const own = await keyId(certificate);
  certificate.extensions = [
    extension('2.5.29.19', true, new BasicConstraints({ cA: true, pathLenConstraint: 0 }).toSchema()),
    extension('2.5.29.15', true, bits(0b0000_0110, 1)),
    extension('2.5.29.14', false, new OctetString({ valueHex: own })),
    extension('2.5.29.30', true, onlyLocal().toSchema()),
  ];
  return sign(certificate, keys, keys.privateKey);
}

/**
 * A certificate of this machine's names and addresses, vouched for by the authority.
 *
 * @param names  names in .local and addresses
 * @source CA/Browser Forum, Baseline Requirements 7.1 (the names stand in subjectAltName, the key is for serverAuth); Apple, "Requirements for
 *   trusted certificates in iOS 13 and macOS 10.15": at most 825 days (from memory)
 */
export async function makeServerCertificate(
  names: readonly string[],
  span: Span,
  authority: Identity,
): Promise<Identity> {
  const keys = await makeKeys();
  const parent = Certificate.fromBER(bytesOfPem(authority.certificate));
  const signing = await webcrypto.subtle.importKey('pkcs8', bytesOfPem(authority.key), algorithm, false, [
    'sign',
  ]);
  const certificate = begin('Underside on this computer', '', span);
  certificate.issuer = parent.subject;
  await certificate.subjectPublicKeyInfo.importKey(keys.publicKey);
  certificate.extensions = [
    extension('2.5.29.19', true, new BasicConstraints({ cA: false }).toSchema()),
    extension('2.5.29.15', true, bits(0b1000_0000, 7)),
    extension('2.5.29.37', false, new ExtKeyUsage({ keyPurposes: ['1.3.6.1.5.5.7.3.1'] }).toSchema()),
    extension('2.5.29.17', false, new GeneralNames({ names: names.map(subjectName) }).toSchema()),
    extension('2.5.29.14', false, new OctetString({ valueHex: await keyId(certificate) })),
    extension(
      '2.5.29.35',
      false,
      new AuthorityKeyIdentifier({
        keyIdentifier: new OctetString({ valueHex: await keyId(parent) }),
      }).toSchema(),
    ),
  ];
  return sign(certificate, keys, signing);
}

function begin(subject: string, issuer: string, { from, to }: Span): Certificate {
  const serial = randomBytes(16);
  // A serial number is positive, and its first byte no zero.
  serial[0] = ((serial[0] ?? 0) & 0x7f) | 0x40;
  const certificate = new Certificate();
  certificate.version = 2;
  certificate.serialNumber = new Integer({ valueHex: plain(serial) });
  certificate.subject.typesAndValues.push(commonName(subject));
  certificate.issuer.typesAndValues.push(commonName(issuer));
  certificate.notBefore.value = from;
  certificate.notAfter.value = to;
  return certificate;
}

const commonName = (value: string) =>
  new AttributeTypeAndValue({ type: '2.5.4.3', value: new Utf8String({ value }) });

function extension(
  extnID: string,
  critical: boolean,
  value: { toBER: (sizeOnly: boolean) => ArrayBuffer },
): Extension {
  return new Extension({ extnID, critical, extnValue: value.toBER(false) });
}

const bits = (byte: number, unusedBits: number) =>
  new BitString({ valueHex: plain(Uint8Array.of(byte)), unusedBits });

function subjectName(name: string): GeneralName {
  return addressBytes(name) === undefined
    ? new GeneralName({ type: 2, value: name })
    : new GeneralName({
        type: 7,
        value: new OctetString({ valueHex: plain(addressBytes(name) as Uint8Array) }),
      });
}

/** Names that end in .local, and addresses of local networks: nothing else. */
function onlyLocal(): NameConstraints {
  const ranges = localRanges.map(({ address, bits: length }) => {
    const bytes = addressBytes(address) as Uint8Array;
    const mask = bytes.map((_, at) => 0xff & ~(0xff >> Math.min(8, Math.max(0, length - 8 * at))));
    return new GeneralName({
      type: 7,
      value: new OctetString({ valueHex: plain(Uint8Array.of(...bytes, ...mask)) }),
    });
  });
  const bases = [new GeneralName({ type: 2, value: 'local' }), ...ranges];
  return new NameConstraints({ permittedSubtrees: bases.map((base) => new GeneralSubtree({ base })) });
}

/** An address as four or sixteen bytes; undefined where it is a name. */
function addressBytes(address: string): Uint8Array | undefined {
  if (isIPv4(address)) return Uint8Array.from(address.split('.'), Number);
  if (!isIPv6(address)) return undefined;
  const groups = new URL(`http://[${address}]`).hostname
    .slice(1, -1)
    .split('::')
    .map((half) => half.split(':').filter((each) => each !== ''));
  const [head = [], tail = []] = groups;
  const all = [...head, ...Array(8 - head.length - tail.length).fill('0'), ...tail];
  return Uint8Array.from(
    all.flatMap((each) => [Number.parseInt(each, 16) >> 8, Number.parseInt(each, 16) & 0xff]),
  );
}

async function makeKeys(): Promise<webcrypto.CryptoKeyPair> {
  return webcrypto.subtle.generateKey(algorithm, true, ['sign', 'verify']);
}

/** @source RFC 5280, 4.2.1.2: the hash of the public key's bits; RFC 7093: SHA-256 cut to 160 bits */
async function keyId(certificate: Certificate): Promise<ArrayBuffer> {
  const key = certificate.subjectPublicKeyInfo.subjectPublicKey.valueBlock.valueHexView;
  return (await webcrypto.subtle.digest('SHA-256', plainView(key))).slice(0, 20);
}

async function sign(
  certificate: Certificate,
  keys: webcrypto.CryptoKeyPair,
  by: webcrypto.CryptoKey,
): Promise<Identity> {
  await certificate.sign(by as never, 'SHA-256');
  return {
    key: pem('PRIVATE KEY', await webcrypto.subtle.exportKey('pkcs8', keys.privateKey)),
    certificate: pem('CERTIFICATE', certificate.toSchema(true).toBER(false)),
  };
}

function pem(label: string, bytes: ArrayBuffer): string {
  const lines =
    Buffer.from(bytes)
      .toString('base64')
      .match(/.{1,64}/g) ?? [];
  return `-----BEGIN ${label}-----\n${lines.join('\n')}\n-----END ${label}-----\n`;
}

/** The bytes of a PEM text. */
export function bytesOfPem(text: string): ArrayBuffer {
  return plain(Buffer.from(text.replaceAll(/-----[^-]+-----|\s/g, ''), 'base64'));
}

const plainView = (bytes: Uint8Array): Uint8Array<ArrayBuffer> => Uint8Array.from(bytes);
const plain = (bytes: Uint8Array): ArrayBuffer => plainView(bytes).buffer;
