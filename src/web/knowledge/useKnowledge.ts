import { useContext } from 'react';
import type { Knowledge } from '../../knowledge/schema.ts';
import { KnowledgeAnew, KnowledgeHere } from './KnowledgeProvider.tsx';

/** Forms, signs, alterations, shops and sources: loaded before any screen inside opens. */
export function useKnowledge(): Knowledge {
  const knowledge = useContext(KnowledgeHere);
  if (knowledge === undefined) throw new Error('This screen stands outside the room that has the knowledge.');
  return knowledge;
}

/** Loads the knowledge anew, so that what was just added is offered everywhere at once. */
export function useKnowledgeAnew(): () => Promise<boolean> {
  return useContext(KnowledgeAnew);
}
