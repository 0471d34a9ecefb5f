import { useCallback, useEffect, useState } from 'react';
import type { AccessAnswer } from '../../server/access/homeAccessRoutes.ts';
import { askAccess, troubleOf } from './askAccess.ts';

/** The page looks again so often: a device that was just paired is to appear while one watches. */
const lookEveryMs = 3000;

/** Who may come in, as it stands; and what changes it, each answered with how it stands then. */
export function useAccess() {
  const [access, setAccess] = useState<AccessAnswer>();
  const [trouble, setTrouble] = useState('');
  const look = useCallback(async () => {
    const asked = await askAccess<AccessAnswer>('');
    if (asked.came === 'answer') setAccess(asked.answer);
  }, []);
  useEffect(() => {
    void look();
    const timer = setInterval(() => document.visibilityState === 'visible' && void look(), lookEveryMs);
    return () => clearInterval(timer);
  }, [look]);
  /** @returns what stood in the way, empty where nothing did */
  const change = async (path: string, body: unknown = {}): Promise<string> => {
    const asked = await askAccess<AccessAnswer>(path, body);
    if (asked.came === 'answer') setAccess(asked.answer);
    setTrouble(troubleOf(asked));
    return troubleOf(asked);
  };
  return { access, trouble, change };
}
