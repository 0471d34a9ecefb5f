import { useContext } from 'react';
import type { Knowledge } from '../../knowledge/schema.ts';
import { KnowledgeHere } from './KnowledgeRoom.tsx';

/** Forms, signs, alterations, shops and sources: loaded before any screen inside opens. */
export function useKnowledge(): Knowledge {
  const knowledge = useContext(KnowledgeHere);
  if (knowledge === undefined) throw new Error('This screen stands outside the room that has the knowledge.');
  return knowledge;
}
