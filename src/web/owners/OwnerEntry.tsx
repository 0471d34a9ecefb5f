import type { Json } from '../../piece/event.ts';
import type { Owner } from '../../piece/owner.ts';
import type { Piece } from '../../piece/piece.ts';
import { ChoiceField } from '../fields/ChoiceField.tsx';
import { PickField } from '../fields/PickField.tsx';
import { TextField } from '../fields/TextField.tsx';
import { TextPlace } from '../fields/TextPlace.tsx';
import { YearField } from '../fields/YearField.tsx';
import { YearsField } from '../fields/YearsField.tsx';
import type { UsedPiece } from '../record/usePiece.ts';
import { Documents } from './Documents.tsx';
import {
  directChoices,
  evidenceChoices,
  meansChoices,
  ownerLine,
  roleChoices,
  surenessChoices,
} from './ownerWords.ts';
import '../fields/entryCard.css';

type Props = { used: UsedPiece; piece: Piece; owner: Owner; isOpen: boolean };

/** One person or firm, folded to a line; open, all that is known of the holding. */
export function OwnerEntry({ used, piece, owner, isOpen }: Props) {
  const { readOnly } = used;
  const set = (field: keyof Owner, to: Json | undefined) =>
    used.record('owner-recorded', [
      { path: ['owners', owner.id, field], ...(to === undefined ? {} : { to }) },
    ]);
  const isFirm = owner.role !== 'owner' && owner.role !== 'custodian';
  const means = meansChoices.some(({ id }) => id === owner.how) ? owner.how : 'other';
  return (
    <details className="entry-card" open={isOpen}>
      <summary>{ownerLine(owner)}</summary>
      <TextPlace name={owner.id}>
        <div className="stack entry-card-fields">
          <div className="pair">
            <TextField
              label="Name"
              value={owner.name}
              save={(words) => set('name', words)}
              readOnly={readOnly}
            />
            <PickField
              label="Who this was"
              value={owner.role}
              options={roleChoices}
              onPick={(role) => set('role', role)}
              readOnly={readOnly}
            />
            <YearField
              label={isFirm ? 'In business from' : 'Born'}
              value={owner.bornIn}
              save={(year) => set('bornIn', year)}
              readOnly={readOnly}
            />
            <YearField
              label={isFirm ? 'In business until' : 'Died'}
              value={owner.diedIn}
              save={(year) => set('diedIn', year)}
              readOnly={readOnly}
            />
            <YearsField
              label="Had it from"
              note="1860, or where it is not sure 1855–1865 or about 1860."
              value={owner.began}
              save={(years) => set('began', years)}
              readOnly={readOnly}
            />
            <YearsField
              label="Had it until"
              note="Empty where it is not known."
              value={owner.ended}
              save={(years) => set('ended', years)}
              readOnly={readOnly}
            />
            <TextField
              label="Place"
              value={owner.place}
              save={(words) => set('place', words)}
              readOnly={readOnly}
            />
            <PickField
              label="How it came to them"
              value={means}
              options={means === 'other' ? [...meansChoices, { id: 'other', name: owner.how }] : meansChoices}
              onPick={(how) => how === 'other' || set('how', how)}
              readOnly={readOnly}
            />
          </div>
          <ChoiceField
            label="Did it come straight from the one before?"
            choices={directChoices}
            value={owner.direct}
            save={(direct) => set('direct', direct)}
            readOnly={readOnly}
          />
          <ChoiceField
            label="How sure is it"
            choices={surenessChoices}
            value={owner.sure}
            save={(sure) => set('sure', sure)}
            readOnly={readOnly}
          />
          <div className="pair">
            <PickField
              label="Known by"
              note="The strongest there is. A paper that names a piece like this one is weak support that it is this one."
              value={owner.evidence ?? ''}
              options={evidenceChoices}
              onPick={(kind) => set('evidence', kind === '' ? undefined : kind)}
              readOnly={readOnly}
            />
            <TextField
              label="Where that stands"
              note="The paper and where it is kept; who said so, when. It is printed as a note."
              value={owner.source}
              save={(words) => set('source', words)}
              readOnly={readOnly}
              lines
            />
          </div>
          <label className="choice">
            <input
              type="checkbox"
              checked={owner.labelled}
              disabled={readOnly}
              onChange={(event) => set('labelled', event.target.checked)}
            />
            <span>A label, stamp or brand of theirs is on the piece</span>
          </label>
          <Documents piece={piece} owner={owner} set={(ids) => set('photos', ids)} readOnly={readOnly} />
          {readOnly ? null : (
            <p>
              <button
                type="button"
                className="button quiet"
                onClick={() => used.record('owner-withdrawn', [{ path: ['owners', owner.id] }])}
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
