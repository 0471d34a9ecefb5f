import { type Outcome, refuse } from '../../ground/fault.ts';
import type { OwnKnowledge } from '../ownKnowledge.ts';
import type { PhotoFolder } from '../photos.ts';
import type { RecordStore } from '../store.ts';
import { type ReadOnly, readOnlyRefusal } from './readOnly.ts';

/** The code of every refusal to write to a record that is looked at only. */
export const readOnlyCode = 'record.read-only';

type Parts = { store: RecordStore; photos: PhotoFolder; own: OwnKnowledge };

/** The parts of a record with everything that would write refused in words, and every piece shown as one that can't be changed. */
export function refuseWriting({ store, photos, own }: Parts, readOnly: ReadOnly): Parts {
  const no = (): Outcome<never> => refuse(readOnlyCode, readOnlyRefusal(readOnly));
  return {
    store: {
      ...store,
      append: no,
      undo: no,
      redo: no,
      adopt: no,
      issue: no,
      piece(id) {
        const view = store.piece(id);
        return view && { ...view, readOnly: true, canUndo: false, canRedo: false };
      },
    },
    photos: { ...photos, put: async () => no(), adopt: async () => no() },
    own: { ...own, put: no, remove: no, undo: no, list: () => ({ ...own.list(), canUndo: false }) },
  };
}
