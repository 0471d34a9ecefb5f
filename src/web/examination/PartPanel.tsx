import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { standingWords } from '../../drawing/hatching.ts';
import { capital } from '../../ground/words.ts';
import { inSentence } from '../../knowledge/inSentence.ts';
import { knownOfPiece } from '../../knowledge/knownOfPiece.ts';
import { originInWords } from '../../weighing/standing.ts';
import type { Weighing } from '../../weighing/weighing.ts';
import { partName } from '../drawer/partName.ts';
import { AboutPart } from './AboutPart.tsx';
import type { ExaminationContext } from './examinationContext.ts';
import { KeysHelp } from './KeysHelp.tsx';
import { moveBetweenSigns } from './moveBetweenSigns.ts';
import { OwnObservations } from './own/OwnObservations.tsx';
import { wholeChoice } from './PartList.tsx';
import { PhotoButtons } from './photos/PhotoButtons.tsx';
import { SignRow } from './SignRow.tsx';
import { howFarLooked, type OfferedFamily, type SignFilter, signsOnPart, wholeKind } from './signsOnPart.ts';

type Props = {
  context: ExaminationContext;
  /** Id of the part, or `whole`. */
  chosen: string;
  /** A sign to go to when the panel opens. */
  sign: string | undefined;
  /** How the part stands by the weighing; nothing before anything is weighed, and for the whole piece. */
  stands: Weighing['parts'][number] | undefined;
  filter: SignFilter;
  onFilter: (filter: SignFilter) => void;
  /** Called once the panel stands, to bring the piece into sight beside it. */
  onShown: () => void;
  onClose: () => void;
};

const filters: [SignFilter, string][] = [
  ['all', 'All'],
  ['not-yet', 'Not yet looked at'],
  ['answered', 'Answered'],
];

/** The signs of one part: beside the drawing where there is room, as a sheet from below on a phone. */
export function PartPanel({ context, chosen, sign, stands, filter, onFilter, onShown, onClose }: Props) {
  const id = useId();
  const [asOf, setAsOf] = useState(context.piece.findings);
  const [words, setWords] = useState('');
  const panel = useRef<HTMLElement>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const part = chosen === wholeChoice ? undefined : chosen;
  const kind =
    part === undefined ? wholeKind : (context.parts.find((each) => each.id === part)?.kind ?? part);
  const { knowledge, piece } = context;
  const form = knowledge.forms[piece.form];
  const ofPiece = knownOfPiece(piece.features, Object.values(piece.parts));
  const every = signsOnPart(knowledge, piece.findings, kind, part, 'all', '', piece.findings, form, ofPiece);
  const families = signsOnPart(knowledge, piece.findings, kind, part, filter, words, asOf, form, ofPiece);
  const far = howFarLooked(every);
  const name = capital(partName(context.parts, part));
  const shown = useRef(onShown);
  shown.current = onShown;
  useEffect(() => {
    const at =
      sign === undefined
        ? null
        : (panel.current?.querySelector<HTMLElement>(`[id="sign-${keyOf(sign, part)}"] [data-sign-name]`) ??
          null);
    (at ?? heading.current)?.focus({ preventScroll: true });
    if (at !== null) at.scrollIntoView({ block: 'center' });
    else shown.current();
  }, [part, sign]);
  const byKey = (event: KeyboardEvent<HTMLElement>) => {
    if (event.key === 'Escape') return onClose();
    if (event.target instanceof HTMLTextAreaElement || event.target instanceof HTMLInputElement) return;
    const names = [...(panel.current?.querySelectorAll<HTMLElement>('[data-sign-name]') ?? [])];
    const line = (event.target as HTMLElement).closest('.exam-sign');
    const to = moveBetweenSigns(
      event.key,
      names.findIndex((each) => line?.contains(each)),
      names.length,
    );
    if (to === undefined) return;
    event.preventDefault();
    names[to]?.focus();
  };
  return (
    <section className="exam-panel" ref={panel} aria-labelledby={`${id}-name`} onKeyDown={byKey}>
      <header className="exam-panel-head">
        <div>
          <h2 id={`${id}-name`} ref={heading} tabIndex={-1}>
            {name}
          </h2>
          <p className="small soft">
            {stands === undefined ? '' : `${capital(standingWords[stands.standing])} · `}
            {far.looked} of {far.of} looked for
          </p>
          {stands !== undefined && (
            <details className="small soft">
              <summary>How probable</summary>
              {stands.standing === 'not-looked-at'
                ? `By what is usual of such a part and by the rest of the piece alone: ${inSentence(originInWords(stands.origin))}`
                : stands.words}
            </details>
          )}
        </div>
        <KeysHelp />
        <button type="button" className="button plain" onClick={onClose}>
          Close <span className="unseen">{name}</span>
        </button>
      </header>
      <div className="exam-sift">
        <div className="exam-find">
          <label htmlFor={`${id}-words`}>Find</label>
          <input
            id={`${id}-words`}
            type="search"
            value={words}
            autoComplete="off"
            onChange={(event) => setWords(event.target.value)}
            aria-label="Find a sign by words"
          />
        </div>
        <fieldset className="exam-filters" aria-label="Which signs">
          {filters.map(([which, label]) => (
            <button
              key={which}
              type="button"
              className="exam-answer"
              aria-pressed={filter === which}
              onClick={() => {
                setAsOf(context.piece.findings);
                onFilter(which);
              }}
            >
              {label}
            </button>
          ))}
        </fieldset>
      </div>
      <OwnObservations context={context} only={{ part }} />
      <p className="unseen" role="status">
        {families.reduce((sum, family) => sum + family.offered.length, 0)} signs listed
      </p>
      {families.length === 0 && (
        <p className="soft">{words === '' ? nothingHere[filter] : `No sign here speaks of “${words}”.`}</p>
      )}
      {families.map((family) => (
        <Family key={family.id} family={family} context={context} part={part} sign={sign} />
      ))}
      <section className="exam-panel-photos">
        <h3>Photos of {partName(context.parts, part)}</h3>
        {!context.readOnly && <PhotoButtons uploads={context.uploads} belongs={{ part }} about={name} />}
      </section>
      {part !== undefined && <AboutPart key={part} context={context} part={part} />}
    </section>
  );
}

const nothingHere: Record<SignFilter, string> = {
  all: 'The knowledge files list no sign for this part yet.',
  'not-yet': 'Every sign listed for this part was looked for.',
  answered: 'Nothing was looked for here yet.',
};

type FamilyProps = {
  family: OfferedFamily;
  context: ExaminationContext;
  part: string | undefined;
  sign: string | undefined;
};

function Family({ family, context, part, sign }: FamilyProps) {
  const cautions = family.offered.map((one) => one.sign.caution).filter((each) => each !== undefined);
  const repeated = [...new Set(cautions)].find(
    (each) => cautions.filter((other) => other === each).length > 1,
  );
  return (
    <section className="exam-family">
      <h3>{family.name}</h3>
      {repeated !== undefined && <p className="caution small">{repeated}</p>}
      <ul className="exam-signs">
        {family.offered.map((offered) => (
          <SignRow
            key={offered.key}
            context={context}
            offered={offered}
            part={part}
            openAtFirst={offered.sign.id === sign}
            saidAbove={repeated}
          />
        ))}
      </ul>
    </section>
  );
}

function keyOf(sign: string, part: string | undefined): string {
  return part === undefined ? sign : `${sign}@${part}`;
}
