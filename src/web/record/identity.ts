import { keep, names, readKept } from '../drawer/drawer.ts';

/** Who is at work here, and on which device: written beside every act. */
export type Identity = { who: string; device: string };

/** Who and device as kept in this browser; a device name is made up once from what the browser says of itself. */
export function readIdentity(): Identity {
  const who = readKept(names.who) ?? '';
  const device = readKept(names.device);
  if (device !== null && device.trim() !== '') return { who, device };
  const made = `${deviceKind(navigator.userAgent)} ${crypto.getRandomValues(new Uint16Array(1))[0]?.toString(36)}`;
  keep(names.device, made);
  return { who, device: made };
}

/** Keeps who and device in this browser. */
export function keepIdentity(identity: Identity): void {
  keep(names.who, identity.who.trim());
  if (identity.device.trim() !== '') keep(names.device, identity.device.trim());
}

function deviceKind(agent: string): string {
  if (/iPad|Tablet/.test(agent)) return 'Tablet';
  if (/iPhone|Android.*Mobile/.test(agent)) return 'Phone';
  if (/Android/.test(agent)) return 'Tablet';
  if (/Macintosh/.test(agent)) return 'Mac';
  if (/Windows/.test(agent)) return 'Windows computer';
  return 'Computer';
}

/**
 * The moment with the device's own zone, as the record keeps it: `2026-11-25T10:15:00.000+01:00`.
 *
 * @param moment         any date
 * @param offsetMinutes  minutes ahead of universal time; the device's own where left out
 */
export function momentWithZone(moment: Date, offsetMinutes = -moment.getTimezoneOffset()): string {
  const local = new Date(moment.getTime() + offsetMinutes * 60_000).toISOString().slice(0, -1);
  const sign = offsetMinutes < 0 ? '-' : '+';
  const minutes = Math.abs(offsetMinutes);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${local}${sign}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** An id no other act has; made by hand where the page is not on a secure address. */
export function freshId(): string {
  if (typeof crypto.randomUUID === 'function') return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
