/** Something on a shelf that can be picked by its name. */
export type Pickable = { id: string; name: string };

/** What was meant by the words typed: one entry, or why none can be told. */
export type Picked = { id: string } | { doubt: string };

/**
 * Which entry of the shelf the words mean: the one of that name, or else the only one whose name has them in it,
 * whatever the case.
 */
export function pickFrom(options: readonly Pickable[], words: string): Picked {
  const wanted = words.trim().toLowerCase();
  const named = options.find((option) => option.name.toLowerCase() === wanted);
  if (named !== undefined) return { id: named.id };
  const near = options.filter((option) => option.name.toLowerCase().includes(wanted));
  const [only] = near;
  if (only !== undefined && near.length === 1) return { id: only.id };
  return {
    doubt:
      near.length === 0
        ? `Nothing on the shelf is called “${words.trim()}”: type a part of its name and pick it.`
        : `${near.length} on the shelf have “${words.trim()}” in their names: pick one.`,
  };
}
