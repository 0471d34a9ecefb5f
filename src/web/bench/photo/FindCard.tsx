import type { useCard } from './useCard.ts';

/** Finds the printed card when told to, says how far it is, and what came of it. */
export function FindCard({ card, found = '' }: { card: ReturnType<typeof useCard>; found?: string }) {
  return (
    <>
      <div className="row">
        <button type="button" className="button" disabled={card.seeking} onClick={card.seek}>
          Find the card
        </button>
        {card.seeking && (
          <>
            <progress aria-label="Looking for the card" value={card.share} />
            <button type="button" className="button quiet" onClick={card.cancel}>
              Cancel
            </button>
          </>
        )}
        {card.found?.found && (
          <span role="status" className="small">
            Found: {card.found.image.length} corners. {[...card.found.says, found].join(' ')}
          </span>
        )}
      </div>
      {card.found?.found === false && (
        <p className="caution" role="alert">
          {card.found.message}
        </p>
      )}
    </>
  );
}
