import type { Finding } from '../../../piece/finding.ts';
import { tiePhotos } from '../answerSign.ts';
import type { ExaminationContext } from '../examinationContext.ts';
import { TiedPhotos } from './TiedPhotos.tsx';

type Props = {
  context: ExaminationContext;
  finding: Finding | undefined;
  part: string | undefined;
  choose: boolean;
};

/** The photos that bear a finding out; when opened, the others of its part can be tied to it too. */
export function FindingPhotos({ context, finding, part, choose }: Props) {
  if (finding === undefined) return null;
  return (
    <TiedPhotos
      context={context}
      label="Photos of this finding"
      what="finding"
      tied={finding.photos}
      part={part}
      choose={choose}
      onTie={(photos) => context.record(tiePhotos(finding, photos))}
    />
  );
}
