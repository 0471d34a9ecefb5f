import type { UsedPiece } from '../record/usePiece.ts';

/** Opens the opinion for a next revision: what was signed stays as it is, and stands until the next is signed. */
export function beginRevision(used: Pick<UsedPiece, 'record'>): void {
  used.record('revision-begun', [
    { path: ['opinion', 'status'], to: 'draft' },
    { path: ['opinion', 'signedBy'], to: '' },
    { path: ['opinion', 'signedOn'] },
    { path: ['opinion', 'isNew'], to: '' },
    { path: ['opinion', 'why'], to: '' },
  ]);
}
