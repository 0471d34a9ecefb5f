import { Link } from '@tanstack/react-router';
import { useId, useRef, useState } from 'react';
import { type Missing, missingForSigning } from '../../engagement/missingForSigning.ts';
import { findingKey } from '../../piece/finding.ts';
import { hasEvidence } from '../../piece/hasEvidence.ts';
import { lastRevision } from '../../piece/issued.ts';
import type { Piece } from '../../piece/piece.ts';
import { TextField } from '../fields/TextField.tsx';
import { useNameBook } from '../history/useNameBook.ts';
import { useJob } from '../opinion/useJob.ts';
import { useDesk } from '../record/DeskProvider.tsx';
import { freshId, momentWithZone, readIdentity } from '../record/identity.ts';
import type { UsedPiece } from '../record/usePiece.ts';
import { today } from '../shell/dayWords.ts';
import { useWeighing } from '../weigh/useWeighing.ts';
import { otherHandWords } from './otherHandWords.ts';
import { Progress } from './Progress.tsx';
import { WhatIsPrinted } from './WhatIsPrinted.tsx';

/** What will be printed, what is missing, and the signature. */
export function SigningSheet({ used, piece }: { used: UsedPiece; piece: Piece }) {
  const desk = useDesk();
  const names = useNameBook(piece);
  const { weighing } = useWeighing(piece, 'looks');
  const before = lastRevision(piece);
  const revision = (before?.revision ?? 0) + 1;
  const [name, setName] = useState(piece.engagement.examiner || readIdentity().who);
  const [day, setDay] = useState(today);
  const id = useId();
  // One id for one sheet: the same signing asked for twice is signed once.
  const request = useRef(freshId());
  const { job, begin } = useJob(`/api/pieces/${encodeURIComponent(piece.id)}/issue`, 'Nothing was signed.');

  const none = !hasEvidence(piece);
  const missing = missingForSigning(
    piece,
    none || weighing === undefined
      ? undefined
      : {
          leading: weighing.leading,
          contradictions: weighing.contradictions.map(({ sign, part }) => ({
            key: findingKey(sign, part ?? undefined),
            name: `${names.sign(sign)}${part === null ? '' : `, ${names.part(part)}`}`,
          })),
        },
  );
  const must = missing.filter((each) => each.must);
  const stated = missing.filter((each) => !each.must);
  const otherHand = otherHandWords(piece.engagement.examiner, name);
  const unnamed = name.trim() === '' || !/^\d{4}-\d{2}-\d{2}$/.test(day);
  const behind = used.saving !== 'saved';
  const weighingStill = !none && weighing === undefined;
  const working = job.stands === 'running';
  const set = (field: 'isNew' | 'why', to: string) =>
    used.record('opinion-changed', [{ path: ['opinion', field], to }]);
  const sign = async () => {
    const { who, device } = readIdentity();
    const at = momentWithZone(new Date());
    const ended = await begin({
      id: request.current,
      name: name.trim(),
      day,
      who,
      device,
      at,
      seq: used.seq,
    });
    if (ended === undefined) return;
    if (ended.stands === 'failed') request.current = freshId();
    desk.hear(piece.id);
  };
  return (
    <div className="signing">
      <h1>Sign revision {revision}</h1>
      {before === undefined ? null : (
        <section className="stack" aria-labelledby="revision">
          <h2 id="revision">What changed, and why</h2>
          <p className="soft">
            Printed on the first page of revision {revision}.{' '}
            <Link to="/piece/$id/comparison" params={{ id: piece.id }}>
              Compare with revision {before.revision}
            </Link>
          </p>
          <TextField
            label="What is new"
            value={piece.opinion.isNew}
            save={(words) => set('isNew', words)}
            lines
          />
          <TextField
            label="Why this revision is made"
            value={piece.opinion.why}
            save={(words) => set('why', words)}
            lines
          />
        </section>
      )}
      <WhatIsPrinted piece={piece} leading={none ? undefined : weighing?.leading} />
      <Lacking id={piece.id} title="Needed before you can sign" all={must} />
      <Lacking id={piece.id} title="Missing: printed as not stated, or left open" all={stated} />
      {missing.length === 0 && !weighingStill ? <p>Nothing is missing.</p> : null}
      <section className="stack" aria-labelledby="signature">
        <h2 id="signature">Signature</h2>
        <p className="caution">
          What a signed opinion binds you to, and whether this use needs a license or a set form, is a matter
          of local law and of your profession’s rules. Read every word before you sign: once signed, it can’t
          be undone, only followed by another revision.
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
        {otherHand === undefined ? null : (
          <p className="caution" role="status">
            {otherHand}{' '}
            <Link to="/piece/$id/engagement" params={{ id: piece.id }} hash="examiner">
              Change the examiner
            </Link>
          </p>
        )}
        <div className="row">
          <button
            type="button"
            className="button"
            disabled={working || behind || weighingStill || unnamed || must.length > 0}
            onClick={() => void sign()}
          >
            {working ? 'Signing…' : `Sign revision ${revision}`}
          </button>
        </div>
        <p className="soft small" role="status">
          {waitsFor({ must: must.length, unnamed, behind, weighingStill })}
        </p>
        <Progress job={job} />
      </section>
    </div>
  );
}

function waitsFor(stands: {
  must: number;
  unnamed: boolean;
  behind: boolean;
  weighingStill: boolean;
}): string {
  if (stands.behind) return 'Waits until the record has every entry.';
  if (stands.must > 0) return 'Fill in what is needed first.';
  if (stands.unnamed) return 'Write your name and give the day first.';
  return stands.weighingStill ? 'Weighing the findings…' : '';
}

function Lacking({ id, title, all }: { id: string; title: string; all: readonly Missing[] }) {
  const heading = useId();
  if (all.length === 0) return null;
  return (
    <section className="stack-tight" aria-labelledby={heading}>
      <h2 id={heading}>{title}</h2>
      <ul className="lacking">
        {all.map((each) => (
          <li key={each.id}>
            <Link to={pages[each.where.page]} params={{ id }} hash={each.where.at}>
              {each.words}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

const pages = {
  engagement: '/piece/$id/engagement',
  examination: '/piece/$id/examination',
  opinion: '/piece/$id/opinion',
  sign: '/piece/$id/sign',
  worth: '/piece/$id/worth',
} as const;
