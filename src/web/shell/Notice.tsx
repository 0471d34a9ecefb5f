import type { ReactNode } from 'react';

/** A quiet word in place of a page: loading, missing, or what went wrong and what to do. */
export function Notice({ title, words, children }: { title: string; words?: string; children?: ReactNode }) {
  return (
    <div className="stack notice" role="status">
      <h1>{title}</h1>
      {words === undefined ? null : <p>{words}</p>}
      {children}
    </div>
  );
}
