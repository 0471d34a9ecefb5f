import { useCallback, useEffect, useState } from 'react';
import { useDesk } from '../record/DeskProvider.tsx';
import { askServer } from '../record/pieceServer.ts';
import { type ListedPiece, listedFrom } from './listedPiece.ts';

/** A piece that can't be read, and why. */
export type DamagedPiece = { id: string; message: string };

/** The pieces in the record, and how to ask for them again; while it does not answer, those that open on this device. */
export function useListedPieces() {
  const desk = useDesk();
  const [pieces, setPieces] = useState<readonly ListedPiece[]>();
  const [damaged, setDamaged] = useState<readonly DamagedPiece[]>([]);
  const [trouble, setTrouble] = useState('');
  const read = useCallback(async () => {
    const asked = await askServer<{ pieces: ListedPiece[]; damaged?: DamagedPiece[] }>(fetch, '/api/pieces');
    if (asked.came === 'answer') {
      setPieces(asked.answer.pieces);
      setDamaged(asked.answer.damaged ?? []);
    }
    if (asked.came === 'nothing') setPieces((await desk.onDevice()).map(listedFrom));
    setTrouble(
      asked.came === 'answer'
        ? ''
        : asked.came === 'refusal'
          ? asked.message
          : 'Only the pieces that open on this device stand here. The whole list comes back by itself.',
    );
  }, [desk]);
  useEffect(() => {
    void read();
    const back = () => document.visibilityState === 'visible' && void read();
    document.addEventListener('visibilitychange', back);
    return () => document.removeEventListener('visibilitychange', back);
  }, [read]);
  useEffect(() => {
    if (trouble === '') return;
    const again = setInterval(() => void read(), 3000);
    return () => clearInterval(again);
  }, [trouble, read]);
  return { pieces, damaged, trouble, read };
}
