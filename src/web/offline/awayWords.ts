import { counted } from '../../ground/words.ts';
import { bytesWords } from './roomLeft.ts';

/** How much waits on this device. */
export type Waits = { away: boolean; host: string; entries: number; photos: number; bytes: number };

/** What waits on this device for the record, in words. */
export function awayWords({ away, host, entries, photos, bytes }: Waits): string {
  const where = away ? `Can’t reach Underside ${host} just now: you can go on.` : '';
  const parts = [
    entries === 0 ? '' : counted(entries, 'entry', 'entries'),
    photos === 0 ? '' : `${counted(photos, 'photo')} (${bytesWords(bytes)})`,
  ].filter((part) => part !== '');
  const isOne = entries + photos === 1;
  const what =
    parts.length === 0
      ? 'Nothing waits to be handed over.'
      : away
        ? `${parts.join(' and ')} ${isOne ? 'waits' : 'wait'} on this device.`
        : `${parts.join(' and ')} ${isOne ? 'is' : 'are'} being handed over.`;
  return [where, what].filter((part) => part !== '').join(' ');
}

/** Which of the waiting photos is going over. */
export function goingWords(waiting: readonly { sha256: string; name: string }[], sha256: string): string {
  const name = waiting.find((photo) => photo.sha256 === sha256)?.name ?? 'A photo';
  return `${name} is going over.`;
}
