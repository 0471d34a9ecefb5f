import { createContext, type ReactNode, useContext } from 'react';
import { textKey } from './keptText.ts';

const Here = createContext('');

/** Names a place within a page, where fields of one name stand more than once: a tool, a photo, a part. */
export function TextPlace({ name, children }: { name: string; children: ReactNode }) {
  const outer = useContext(Here);
  return <Here value={outer === '' ? name : `${outer}/${name}`}>{children}</Here>;
}

/** Where the text of the field of this name is kept while it is typed. */
export function useTextKey(name: string): string {
  return textKey(location.pathname, useContext(Here), name);
}
