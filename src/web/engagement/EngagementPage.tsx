import type { Engagement } from '../../piece/engagement.ts';
import { DayField } from '../fields/DayField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { usePiece } from '../record/usePiece.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import { AskedByUse } from './AskedByUse.tsx';
import { ClaimFields } from './ClaimFields.tsx';
import { PurposeFields } from './PurposeFields.tsx';
import { TurnedOut } from './TurnedOut.tsx';
import type { TextOf } from './textOf.ts';
import './engagement.css';

/** The job as it was taken on: who asks, for what, what they believe, on which days and terms. */
export function EngagementPage() {
  const used = usePiece(usePieceId());
  const { piece, readOnly } = used;
  usePageTitle('Engagement', piece === undefined ? '' : pieceTitle(piece));
  if (piece === undefined) return null;
  const { engagement } = piece;
  const set = (field: keyof Engagement, to: string | undefined) =>
    used.record('engagement-changed', [{ path: ['engagement', field], ...(to === undefined ? {} : { to }) }]);
  const text = (field: TextOf, label: string, note?: string, lines = false) => (
    <TextField
      label={label}
      value={engagement[field]}
      save={(words) => set(field, words)}
      readOnly={readOnly}
      lines={lines}
      {...(note === undefined ? {} : { note })}
    />
  );
  const dated = (field: 'askedOn' | 'examinedOn' | 'effectiveOn', label: string, note: string) => (
    <DayField
      label={label}
      note={note}
      value={engagement[field]}
      save={(day) => set(field, day)}
      readOnly={readOnly}
    />
  );
  return (
    <div className="engagement">
      <h1>Engagement</h1>
      <section className="stack" aria-labelledby="who-asks">
        <h2 id="who-asks">Who asks</h2>
        <div className="pair">
          {text('client', 'Client', 'Who gave the job and will receive the opinion.')}
          {text('owner', 'Owner', 'Where it is someone else.')}
        </div>
        {text('clientAddress', 'Client’s address', undefined, true)}
      </section>
      <PurposeFields engagement={engagement} set={set} text={text} readOnly={readOnly} />
      <AskedByUse
        piece={piece}
        answer={(id, to) =>
          used.record('engagement-changed', [
            { path: ['engagement', 'answers', id], ...(to === undefined ? {} : { to }) },
          ])
        }
        readOnly={readOnly}
      />
      <ClaimFields
        used={used}
        piece={piece}
        background={text(
          'background',
          'What is told of it',
          'The story that comes with it: where it stood, who had it, papers.',
          true,
        )}
      />
      <section className="stack" aria-labelledby="days">
        <h2 id="days">Days and place</h2>
        <div className="pair">
          {dated('askedOn', 'Asked on', 'When the job was taken on.')}
          {dated('examinedOn', 'Examined on', 'When the piece was seen.')}
          {dated('effectiveOn', 'Effective date', 'The day the opinion holds for.')}
        </div>
        {text('examinedAt', 'Examined at', 'Room, light, and what it stood on.')}
      </section>
      <section className="stack" aria-labelledby="terms">
        <h2 id="terms">Terms</h2>
        {text(
          'leave',
          'What the owner allows',
          'Turn it over, lift the seat, draw a tack, take a sample. Ask before, not after.',
          true,
        )}
        <p className="caution">
          Two people for anything heavy or loose in its joints. Nothing is taken apart, scraped or sampled
          without the owner’s leave in writing.
        </p>
        <div className="pair">
          {text('fee', 'Fee', 'As agreed. A fee that hangs on the finding or the worth spoils the opinion.')}
          {text(
            'interest',
            'Own interest in the piece',
            'None, or what it is: bought, sold, offered, related to the owner.',
          )}
        </div>
        {text(
          'limits',
          'Limiting conditions',
          'What could not be done or seen, and for what the opinion must not be used.',
          true,
        )}
      </section>
      <section className="stack" aria-labelledby="examiner">
        <h2 id="examiner">The examiner</h2>
        <div className="pair">
          {text('examiner', 'Name')}
          {text('examinerQualification', 'Training and experience')}
        </div>
        {text('examinerAddress', 'Address', undefined, true)}
      </section>
      <TurnedOut used={used} piece={piece} />
    </div>
  );
}
