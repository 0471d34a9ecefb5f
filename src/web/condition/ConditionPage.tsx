import { useState } from 'react';
import { partsOf } from '../../drawing/partsOf.ts';
import { type Condition, damage as damageSchema } from '../../piece/condition.ts';
import type { Piece } from '../../piece/piece.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { useKnowledge } from '../knowledge/useKnowledge.ts';
import { type UsedPiece, usePiece } from '../record/usePiece.ts';
import { pieceTitle } from '../shell/pieceTitle.ts';
import { usePageTitle } from '../shell/usePageTitle.ts';
import { usePieceId } from '../shell/usePieceId.ts';
import { DamageEntry } from './DamageEntry.tsx';
import './condition.css';

/** The condition: damage by damage, with where it is and how great, and the whole in words. */
export function ConditionPage() {
  const used = usePiece(usePieceId());
  return used.piece === undefined ? null : <ConditionOf used={used} piece={used.piece} />;
}

function ConditionOf({ used, piece }: { used: UsedPiece; piece: Piece }) {
  usePageTitle('Condition', pieceTitle(piece));
  const { forms } = useKnowledge();
  const [added, setAdded] = useState('');
  const { readOnly } = used;
  const form = forms[piece.form];
  const parts = form === undefined ? [] : partsOf(form, piece.features);
  const listed = Object.values(piece.damages);
  const set = (field: keyof Condition, to: string) =>
    used.record('condition-described', [{ path: ['condition', field], to }]);
  const text = (field: 'words' | 'stability' | 'climate' | 'light', label: string, note: string) => (
    <TextField
      label={label}
      note={note}
      value={piece.condition[field]}
      save={(words) => set(field, words)}
      readOnly={readOnly}
      lines={field === 'words'}
    />
  );
  const add = () => {
    const id = crypto.randomUUID();
    used.record('damage-recorded', [{ path: ['damages', id], to: damageSchema.parse({ id }) }]);
    setAdded(id);
  };
  return (
    <div className="condition-page stack">
      <h1>Condition</h1>
      <p className="said">
        What is damaged, where and how far, as it is today. What a trace tells of the piece’s age belongs to
        the examination; what to do about it, to a conservator.
      </p>
      <section className="stack-tight" aria-labelledby="damage-list">
        <h2 id="damage-list">Damage, entry by entry</h2>
        {listed.length === 0 ? (
          <p className="soft">
            Nothing is entered yet. Go over the piece part by part, and enter what is worth naming.
          </p>
        ) : (
          listed.map((each, index) => (
            <DamageEntry
              key={each.id}
              used={used}
              piece={piece}
              parts={parts}
              damage={each}
              number={index + 1}
              isOpen={each.id === added}
            />
          ))
        )}
        {readOnly ? null : (
          <p>
            <button type="button" className="button" onClick={add}>
              Add a damage
            </button>
          </p>
        )}
      </section>
      <section className="stack" aria-labelledby="condition-whole">
        <h2 id="condition-whole">As a whole</h2>
        <ChoiceField
          label="The piece is"
          choices={[
            { id: 'complete', name: 'Complete' },
            { id: 'incomplete', name: 'Incomplete' },
            { id: 'fragment', name: 'A fragment' },
          ]}
          value={piece.condition.completeness}
          save={(to) => set('completeness', to)}
          readOnly={readOnly}
        />
        <ChoiceField
          label="Its state is"
          note="One word is read differently by everyone: it is printed only beside your own words."
          choices={[
            { id: 'excellent', name: 'Excellent' },
            { id: 'good', name: 'Good' },
            { id: 'fair', name: 'Fair' },
            { id: 'poor', name: 'Poor' },
          ]}
          value={piece.condition.state}
          save={(to) => set('state', to)}
          readOnly={readOnly}
        />
        {text('words', 'In your own words', 'What a reader has to know who will not see the piece.')}
        <div className="pair">
          {text(
            'stability',
            'Safe to move and to use',
            'Which joints, which loads; or that it was not tried.',
          )}
          {text('climate', 'Humidity and temperature', 'As measured on the day, or not measured.')}
          {text('light', 'Light and tools', 'Daylight, raking lamp, lens, mirror.')}
        </div>
      </section>
      <p className="small soft">The condition report is made on the Opinion page, under “Other papers”.</p>
    </div>
  );
}
