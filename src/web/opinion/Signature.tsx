import { Link } from '@tanstack/react-router';
import { useId, useState } from 'react';
import { dayWords } from '../../units/days.ts';
import { useHistory } from '../history/useHistory.ts';
import { readIdentity } from '../record/identity.ts';
import { today } from '../shell/dayWords.ts';
import { actsAfterSigning } from './actsAfterSigning.ts';
import { lacksForSigning, type OpinionRoom } from './opinionRoom.ts';

/** Signing with name and day, or opening a signed opinion again. */
export function Signature({ room }: { room: OpinionRoom }) {
  if (room.piece.opinion.status === 'signed') return <Signed room={room} />;
  return room.used.readOnly ? null : <SigningForm room={room} />;
}

function Signed({ room }: { room: OpinionRoom }) {
  const { piece, used } = room;
  const { opinion } = piece;
  const { events } = useHistory(piece.id, used.seq);
  const after = actsAfterSigning(events ?? []);
  const reopen = () =>
    used.record('opinion-signed', [
      { path: ['opinion', 'status'], to: 'draft' },
      { path: ['opinion', 'signedBy'], to: '' },
      { path: ['opinion', 'signedOn'] },
    ]);
  return (
    <section className="stack" aria-labelledby="signature">
      <h2 id="signature">Signature</h2>
      <p className="said">
        Signed by {opinion.signedBy}
        {opinion.signedOn === undefined ? '' : ` on ${dayWords(opinion.signedOn)}`}.
      </p>
      {after === 0 ? null : (
        <p className="caution">
          {after === 1 ? 'One act came' : `${after} acts came`} after the signing, and the signature does not
          cover what they changed. See the{' '}
          <Link to="/piece/$id/history" params={{ id: piece.id }}>
            history
          </Link>
          , and sign again if it holds.
        </p>
      )}
      {used.readOnly ? null : (
        <div className="row">
          <button type="button" className="button quiet" onClick={reopen}>
            Open again as a draft
          </button>
          <span className="soft small">The signed wording stays in the history.</span>
        </div>
      )}
    </section>
  );
}

function SigningForm({ room }: { room: OpinionRoom }) {
  const { piece, used } = room;
  const id = useId();
  const [name, setName] = useState(piece.engagement.examiner || readIdentity().who);
  const [day, setDay] = useState(today);
  const [asked, setAsked] = useState(false);
  const lacks = [
    ...lacksForSigning(room),
    ...(name.trim() === '' ? ['write your name'] : []),
    ...(/^\d{4}-\d{2}-\d{2}$/.test(day) ? [] : ['give the day']),
  ];
  const sign = () => {
    setAsked(true);
    if (lacks.length > 0) return;
    used.record('opinion-signed', [
      { path: ['opinion', 'status'], to: 'signed' },
      { path: ['opinion', 'signedBy'], to: name.trim() },
      { path: ['opinion', 'signedOn'], to: day },
    ]);
  };
  return (
    <section className="stack" aria-labelledby="signature">
      <h2 id="signature">Signature</h2>
      <p className="caution">
        What a signed opinion binds you to, and whether this use needs a license or a set form, is a matter of
        local law and of your profession’s rules. Read every word before you sign.
      </p>
      <div className="pair">
        <div className="field">
          <label htmlFor={`${id}-name`}>Signed by</label>
          <input
            id={`${id}-name`}
            type="text"
            autoComplete="name"
            value={name}
            onChange={(change) => setName(change.target.value)}
          />
        </div>
        <div className="field">
          <label htmlFor={`${id}-day`}>On</label>
          <input
            id={`${id}-day`}
            type="date"
            value={day}
            onChange={(change) => setDay(change.target.value)}
          />
        </div>
      </div>
      <div className="row">
        <button type="button" className="button" onClick={sign}>
          Sign the opinion
        </button>
      </div>
      <p role="alert" className="doubt">
        {asked && lacks.length > 0 ? `Before you can sign: ${lacks.join('; ')}.` : ''}
      </p>
    </section>
  );
}
