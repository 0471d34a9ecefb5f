import type { Finding } from '../../../piece/finding.ts';
import { tiePhotos } from '../answerSign.ts';
import type { ExamRoom } from '../examRoom.ts';
import { TiedPhotos } from './TiedPhotos.tsx';

type Props = { room: ExamRoom; finding: Finding | undefined; part: string | undefined; choose: boolean };

/** The photos that bear a finding out; when opened, the others of its part can be tied to it too. */
export function FindingPhotos({ room, finding, part, choose }: Props) {
  if (finding === undefined) return null;
  return (
    <TiedPhotos
      room={room}
      label="Photos of this finding"
      what="finding"
      tied={finding.photos}
      part={part}
      choose={choose}
      onTie={(photos) => room.record(tiePhotos(finding, photos))}
    />
  );
}
