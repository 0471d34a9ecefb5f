import { useNavigate } from '@tanstack/react-router';
import { useId, useState } from 'react';
import { capital } from '../../../ground/words.ts';
import type { Observation } from '../../../piece/observation.ts';
import { expectedInWords, saysNothing } from '../../../piece/observationWords.ts';
import { partName } from '../../drawer/partName.ts';
import { TextField } from '../../fields/TextField.tsx';
import { TextPlace } from '../../fields/TextPlace.tsx';
import { useReadOnly } from '../../record/useReadOnly.ts';
import { proposeSign } from '../../reference/own/proposeSign.ts';
import type { ExaminationContext } from '../examinationContext.ts';
import { PhotoButtons } from '../photos/PhotoButtons.tsx';
import { TiedPhotos } from '../photos/TiedPhotos.tsx';
import { ExpectedGrid, ExpectedInWords } from './ExpectedGrid.tsx';
import { recordObservation, withdrawObservation } from './observationActs.ts';
import { PartOf } from './PartOf.tsx';

type Props = { context: ExaminationContext; observation: Observation; openAtFirst: boolean };

/** One observation of the examiner's own, marked as such: what was seen and how far it would be expected; changed one touch below. */
export function ObservationCard({ context, observation, openAtFirst }: Props) {
  const id = useId();
  const [open, setOpen] = useState(openAtFirst);
  const { words, part, expected, photos } = observation;
  const record = (to: Observation) => context.record(recordObservation(to));
  return (
    <li className="exam-sign" data-state="present" data-observation={observation.id}>
      <button
        type="button"
        className="exam-sign-name"
        data-sign-name=""
        aria-expanded={open}
        aria-controls={`${id}-more`}
        onClick={() => setOpen(!open)}
      >
        <span className="said">{words}</span>
        <span className="exam-sign-cost">
          <span className="mark">your own</span> {capital(partName(context.parts, part))} ·{' '}
          {saysNothing(expected) ? 'weighs nothing: all six words are the same' : expectedInWords(expected)}
        </span>
      </button>
      {!context.readOnly && (
        <div className="exam-answer-row">
          <PhotoButtons
            uploads={context.uploads}
            belongs={{ part, observation: observation.id }}
            about="this observation"
          />
        </div>
      )}
      <TiedPhotos
        context={context}
        label="Photos of this observation"
        what="observation"
        tied={photos}
        part={part}
        choose={open}
        onTie={(to) => record({ ...observation, photos: to })}
      />
      <div id={`${id}-more`} hidden={!open} className="exam-more">
        {open && context.readOnly && <ExpectedInWords expected={expected} />}
        {open && !context.readOnly && (
          <>
            <TextPlace name={observation.id}>
              <TextField
                label="What you saw"
                note="It needs words: to take it out, withdraw it."
                value={words}
                lines
                save={(text) => {
                  if (text.trim() !== '') record({ ...observation, words: text });
                }}
              />
            </TextPlace>
            <PartOf
              context={context}
              part={part}
              onPick={(to) => {
                const { part: _before, ...rest } = observation;
                record(to === undefined ? rest : { ...rest, part: to });
              }}
            />
            <ExpectedGrid expected={expected} onChange={(to) => record({ ...observation, expected: to })} />
            <Doors context={context} observation={observation} />
          </>
        )}
      </div>
    </li>
  );
}

/** What else can be done with it: proposed as a sign of one's own, or taken back. */
function Doors({ context, observation }: { context: ExaminationContext; observation: Observation }) {
  const go = useNavigate();
  const shut = useReadOnly() !== null;
  const propose = () => {
    proposeSign(observation, context);
    void go({ to: '/reference/own', search: { kind: 'sign', proposal: observation.id } });
  };
  return (
    <div className="row">
      {!shut && (
        <button type="button" className="button quiet" onClick={propose}>
          Propose it as a sign of your own
        </button>
      )}
      <button
        type="button"
        className="button plain"
        onClick={() => context.record(withdrawObservation(observation.id))}
      >
        Withdraw it
      </button>
    </div>
  );
}
