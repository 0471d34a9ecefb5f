import { capital } from '../../ground/words.ts';
import type { FormPart } from '../../knowledge/schema.ts';
import { type Damage, damageTerms, degrees } from '../../piece/condition.ts';
import { damageKindWords, damageLine, damageOriginWords } from '../../piece/damageWords.ts';
import type { Json } from '../../piece/event.ts';
import type { Piece } from '../../piece/piece.ts';
import { PickField } from '../fields/PickField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TextPlace } from '../fields/TextPlace.tsx';
import { Documents } from '../owners/Documents.tsx';
import type { UsedPiece } from '../record/usePiece.ts';
import '../fields/entryCard.css';

type Props = {
  used: UsedPiece;
  piece: Piece;
  parts: readonly FormPart[];
  damage: Damage;
  number: number;
  isOpen: boolean;
};

const terms = Object.values(damageTerms).flat();

/** One damage, folded to a line; open, all that is told of it. */
export function DamageEntry({ used, piece, parts, damage, number, isOpen }: Props) {
  const { readOnly } = used;
  const set = (field: keyof Damage, to: Json | undefined) =>
    used.record('damage-recorded', [
      { path: ['damages', damage.id, field], ...(to === undefined ? {} : { to }) },
    ]);
  const pick = (field: keyof Damage) => (to: string) => set(field, to === '' ? undefined : to);
  const text = (field: 'where' | 'size' | 'words', label: string, note: string) => (
    <TextField
      label={label}
      note={note}
      value={damage[field]}
      save={(words) => set(field, words)}
      readOnly={readOnly}
    />
  );
  const isOwn = damage.term !== '' && !terms.includes(damage.term);
  const partName = parts.find(({ id }) => id === damage.part)?.name;
  return (
    <details className="entry-card" open={isOpen}>
      <summary>
        {number}. {damageLine(damage, partName)}
      </summary>
      <TextPlace name={damage.id}>
        <div className="stack entry-card-fields">
          <div className="pair">
            <PickField
              label="Part"
              value={damage.part ?? ''}
              options={[
                { id: '', name: 'The piece as a whole' },
                ...parts.map(({ id, name }) => ({ id, name: capital(name) })),
              ]}
              onPick={pick('part')}
              readOnly={readOnly}
            />
            <PickField
              label="What it is"
              value={isOwn ? '' : damage.term}
              options={[
                { id: '', name: isOwn ? 'Words of your own' : 'Choose, or write below' },
                ...Object.entries(damageTerms).flatMap(([group, all]) =>
                  all.map((term) => ({ id: term, name: `${group}: ${term}` })),
                ),
              ]}
              onPick={(term) => term === '' || set('term', term)}
              readOnly={readOnly}
            />
            <TextField
              label="Or in your own word"
              value={isOwn ? damage.term : ''}
              save={(term) => (term.trim() === '' && !isOwn ? undefined : set('term', term))}
              readOnly={readOnly}
            />
            <PickField
              label="How great"
              value={damage.degree ?? ''}
              options={[{ id: '', name: 'Not said' }, ...degrees.map((id) => ({ id, name: capital(id) }))]}
              onPick={pick('degree')}
              readOnly={readOnly}
            />
            {text('where', 'Where on it', 'Which face, how far from which end.')}
            {text('size', 'How large', '4 1/2 in along the grain, the size of a hand.')}
            <PickField
              label="It is to"
              value={damage.kind}
              options={Object.entries(damageKindWords).map(([id, name]) => ({ id, name: capital(name) }))}
              onPick={pick('kind')}
              readOnly={readOnly}
            />
            <PickField
              label="Does it go on?"
              note="Fresh dust, a moving crack, paint that comes away at a breath."
              value={damage.goesOn}
              options={[
                { id: 'unknown', name: 'Could not tell' },
                { id: 'no', name: 'No' },
                { id: 'yes', name: 'Yes' },
              ]}
              onPick={pick('goesOn')}
              readOnly={readOnly}
            />
            <PickField
              label="It comes from"
              value={damage.origin}
              options={Object.entries(damageOriginWords).map(([id, name]) => ({ id, name: capital(name) }))}
              onPick={pick('origin')}
              readOnly={readOnly}
            />
            {text('words', 'Besides', 'What else is worth saying of it.')}
          </div>
          <Documents
            piece={piece}
            owner={damage}
            set={(ids) => set('photos', ids)}
            readOnly={readOnly}
            of="this damage"
          />
          {readOnly ? null : (
            <p>
              <button
                type="button"
                className="button quiet"
                onClick={() => used.record('damage-withdrawn', [{ path: ['damages', damage.id] }])}
              >
                Remove from this piece
              </button>
            </p>
          )}
        </div>
      </TextPlace>
    </details>
  );
}
