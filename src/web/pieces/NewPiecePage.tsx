import { useNavigate } from '@tanstack/react-router';
import { useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { YearSpan } from '../../units/years.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { dropTextsOf } from '../fields/keptText.ts';
import { TextField } from '../fields/TextField.tsx';
import { YearsField } from '../fields/YearsField.tsx';
import { familyNames } from '../knowledge/familyNames.ts';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { useDesk } from '../record/DeskProvider.tsx';
import { freshId, readIdentity } from '../record/identity.ts';
import { useReadOnly } from '../record/useReadOnly.ts';
import { today } from '../shell/dayWords.ts';
import { Notice } from '../shell/Notice.tsx';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { FeatureChoices } from './FeatureChoices.tsx';
import { FormPicture } from './FormPicture.tsx';
import { chosenFeatures, freshPiece } from './freshPiece.ts';
import './pieces.css';

/** Taking a new piece on: its form, its name, and what it is said to be. All of it can be changed later. */
export function NewPiecePage() {
  usePageTitle('New piece');
  return useReadOnly() === null ? (
    <NewPiece />
  ) : (
    <Notice title="New piece" words="This record is open read-only: no piece can be taken on in it." />
  );
}

function NewPiece() {
  const { forms } = useKnowledge();
  const desk = useDesk();
  const navigate = useNavigate();
  const [formId, setFormId] = useState('');
  const [lacks, setLacks] = useState(false);
  const [features, setFeatures] = useState<Record<string, string>>({});
  const [title, setTitle] = useState('');
  const [mode, setMode] = useState<'in-hand' | 'photo-only'>('in-hand');
  const [period, setPeriod] = useState<YearSpan>();
  const [place, setPlace] = useState('');
  const [maker, setMaker] = useState('');
  const form = forms[formId];

  const open = () => {
    setLacks(form === undefined);
    if (form === undefined) return;
    const id = freshId();
    const claim = {
      ...(period === undefined ? {} : { period: [period[0], period[1]] as [number, number] }),
      ...(place === '' ? {} : { place }),
      ...(maker === '' ? {} : { maker }),
    };
    const piece = freshPiece({
      id,
      form,
      features,
      title,
      mode,
      claim,
      openedOn: today(),
      examiner: readIdentity().who,
    });
    desk.record(id, 'piece-opened', [{ path: [], to: piece }]);
    dropTextsOf(location.pathname);
    void navigate({ to: '/piece/$id/engagement', params: { id } });
  };

  const openLatest = useRef(open);
  openLatest.current = open;
  return (
    <form
      className="new-piece"
      onSubmit={(submit) => {
        submit.preventDefault();
        // What is still being typed is kept first; what can't be read is asked about before the piece is opened.
        const writing = document.activeElement;
        flushSync(() => writing instanceof HTMLElement && writing.blur());
        const unread = submit.currentTarget.querySelector<HTMLElement>('[aria-invalid="true"]');
        if (unread === null) openLatest.current();
        else unread.focus();
      }}
    >
      <h1>New piece</h1>
      {Object.entries(familyNames).map(([family, name]) => (
        <ChoiceField
          key={family}
          label={name}
          choices={Object.values(forms)
            .filter((one) => one.family === family)
            .map((one) => ({
              id: one.id,
              name: one.name,
              note: one.what.split('; left and right')[0]?.replace(/\.$/, '') ?? one.what,
              picture: (
                <FormPicture form={one} features={chosenFeatures(one, one.id === formId ? features : {})} />
              ),
            }))}
          value={formId === '' ? undefined : formId}
          save={(id) => {
            setFormId(id);
            setFeatures({});
          }}
        />
      ))}
      {form === undefined ? null : (
        <FeatureChoices
          form={form}
          features={features}
          choose={(feature, option) => setFeatures({ ...features, [feature]: option })}
          pictures
        />
      )}
      <TextField
        label="Name of the piece"
        note="As it will head the opinion. It can wait."
        value={title}
        save={setTitle}
        holds
      />
      <ChoiceField
        label="Seen"
        choices={[
          { id: 'in-hand', name: 'In the hand', note: 'It can be touched, turned and measured.' },
          {
            id: 'photo-only',
            name: 'In photographs only',
            note: 'Weighs less, and can’t settle a reading by itself.',
          },
        ]}
        value={mode}
        save={setMode}
      />
      <div className="pair">
        <YearsField
          label="Said to be of"
          note="Years: 1760–1790, 1760s, about 1775."
          value={period}
          save={(years) => setPeriod(years)}
          holds
        />
        <TextField label="Said to come from" note="Town or region." value={place} save={setPlace} holds />
        <TextField label="Said to be by" note="Maker or shop." value={maker} save={setMaker} holds />
      </div>
      <div className="row">
        <button type="submit" className="button">
          Open the piece
        </button>
      </div>
      <p role="alert" className="doubt">
        {lacks && form === undefined ? 'Choose the form first: it says which parts and signs there are.' : ''}
      </p>
    </form>
  );
}
