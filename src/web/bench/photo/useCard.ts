import { useEffect, useRef, useState } from 'react';
import type { CardFound } from '../vision/findCard.ts';
import { openVision, type Vision } from '../vision/openVision.ts';

/** Looks for the printed card in a picture when asked; the finder’s worker ends with the screen. */
export function useCard(picture: Blob) {
  const vision = useRef<Vision | undefined>(undefined);
  const asked = useRef(0);
  const [share, setShare] = useState<number>();
  const [found, setFound] = useState<CardFound>();
  useEffect(() => () => vision.current?.close(), []);
  const seek = async () => {
    asked.current += 1;
    const ask = asked.current;
    setFound(undefined);
    setShare(0);
    vision.current ??= openVision();
    const card = await vision.current.findCard(picture, (done) => asked.current === ask && setShare(done));
    if (asked.current !== ask) return;
    setFound(card);
    setShare(undefined);
  };
  return {
    found,
    seeking: share !== undefined,
    share: share ?? 0,
    seek: () => void seek(),
    /** Ends a search that is under way, and forgets what was found. */
    cancel: () => {
      asked.current += 1;
      vision.current?.close();
      setFound(undefined);
      setShare(undefined);
    },
  };
}
