import { useId, useState } from 'react';

/** A piece in forms that other programs read: tables, Linked Art, plates with a IIIF manifest. */
export function OpenRecords({ id }: { id: string }) {
  const label = useId();
  const [base, setBase] = useState('');
  const bad = base.trim() !== '' && !/^https?:\/\/\S+$/.test(base.trim());
  const address = (kind: string) =>
    `/api/pieces/${encodeURIComponent(id)}/open/${kind}${base.trim() === '' || bad ? '' : `?base=${encodeURIComponent(base.trim())}`}`;
  const forms = [
    {
      kind: 'csv',
      name: 'All entries as tables (CSV)',
      says: 'One table for each list, for a spreadsheet. Nothing is left out.',
    },
    {
      kind: 'linked-art',
      name: 'Linked Art (JSON-LD)',
      says: 'For museums: the piece, each later part by itself, each owner, the worth as your assignment.',
    },
    {
      kind: 'iiif',
      name: 'Plates with a IIIF manifest',
      says: 'For viewers of pictures: plates in their order with captions and marks.',
    },
  ];
  return (
    <section className="stack" aria-labelledby={`${label}-title`}>
      <h2 id={`${label}-title`}>Open records</h2>
      <p className="soft">
        For others to read without Underside. They name owners and prices as you entered them: look through
        them before you hand them on.
      </p>
      <div className="field">
        <label htmlFor={label}>Address where they will be published</label>
        <span className="note" id={`${label}-note`}>
          Records of museums and pictures name themselves by an address. Left empty, one is used that nobody
          can have.
        </span>
        <input
          id={label}
          type="url"
          value={base}
          aria-describedby={`${label}-note`}
          aria-invalid={bad}
          onChange={(change) => setBase(change.target.value)}
        />
        {bad ? (
          <p className="doubt small" role="status">
            An address begins with https:// or http://.
          </p>
        ) : null}
      </div>
      {forms.map(({ kind, name, says }) => (
        <p key={kind}>
          <a className="button quiet" href={address(kind)} download>
            {name}
          </a>{' '}
          <span className="small soft">{says}</span>
        </p>
      ))}
    </section>
  );
}
