import { inSentence } from '../knowledge/inSentence.ts';
import type { Knowledge, Sign } from '../knowledge/schema.ts';

/** What a sign tells of, in words that go behind “tells of”. */
export function tellsOf({ hangsOn }: Sign, { alterations }: Knowledge): string {
  if (!hangsOn.startsWith('alteration/')) return causeNames[hangsOn] ?? hangsOn;
  const id = hangsOn.slice('alteration/'.length);
  return `whether this was done: ${inSentence(alterations[id]?.name ?? id)}`;
}

const causeNames: Record<string, string> = {
  making: 'how the piece was made',
  year: 'when the piece was made',
  'part-year': 'when the part was made',
  origin: 'whether the part belongs',
  tooling: 'what it was worked with',
  ageing: 'whether it aged by itself',
  use: 'whether it was used',
};
