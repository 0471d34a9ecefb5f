import { useSyncExternalStore } from 'react';
import { useDesk } from '../record/DeskProvider.tsx';
import { awayWords, goingWords } from './awayWords.ts';
import { hostWords } from './hostWords.ts';
import { useWaitingPhotos } from './photos/PhotoKeeperProvider.tsx';
import { roomWords, useRoomLeft } from './roomLeft.ts';
import './offline.css';

/** On every page while the record does not answer, or photos wait: what waits on this device, and the room left. */
export function AwayBand() {
  const desk = useDesk();
  const { away, queued } = useSyncExternalStore(desk.watchAbove, desk.above);
  const { waiting, going } = useWaitingPhotos();
  const room = useRoomLeft(waiting.length);
  if (!away && waiting.length === 0) return null;
  const bytes = waiting.reduce((sum, photo) => sum + photo.bytes, 0);
  return (
    <aside className="away-band" aria-label="Without the record">
      <p role="status">
        {awayWords({
          away,
          host: hostWords(location.hostname),
          entries: queued,
          photos: waiting.length,
          bytes,
        })}
      </p>
      {going === undefined ? null : (
        <p className="small">
          {goingWords(waiting, going.sha256)}{' '}
          <progress value={going.share} max={1} aria-label="Handed over" />
        </p>
      )}
      {room === undefined ? null : <p className="small soft">{roomWords(room)}</p>}
    </aside>
  );
}
