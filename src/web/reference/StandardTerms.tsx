import type { StandardTerm } from '../../knowledge/standardTermSchema.ts';

/** The term of the Art & Architecture Thesaurus for an entry; nothing where none could be checked. */
export function StandardTerms({ aat }: { aat: StandardTerm | undefined }) {
  if (aat === undefined) return null;
  return (
    <section className="stack-tight">
      <h3>Standard terms</h3>
      <p>
        AAT {aat.id}, {aat.term}
        {aat.fit === 'broader' ? ' (the broader term)' : ''}
      </p>
    </section>
  );
}
