import { useState } from 'react';
import type { z } from 'zod';
import { keep, readKept } from '../../theme/themeChoice.ts';

/**
 * What is being typed at a tool, kept on this device as it is typed, so that it is there again when the tool is laid out next.
 *
 * @param name    of the tool and the piece
 * @param shape   what a kept draft must look like; one that does not is left aside
 * @param empty   what stands there at first
 */
export function useDraft<Draft>(
  name: string,
  shape: z.ZodType<Draft>,
  empty: () => Draft,
): [Draft, (draft: Draft) => void] {
  const key = `underside.bench.${name}`;
  const [draft, setDraft] = useState(() => readDraft(readKept(key), shape) ?? empty());
  const type = (next: Draft) => {
    setDraft(next);
    keep(key, JSON.stringify(next));
  };
  return [draft, type];
}

/** A draft as it was kept; undefined where none was, or none that can be read. */
export function readDraft<Draft>(kept: string | null, shape: z.ZodType<Draft>): Draft | undefined {
  if (kept === null) return undefined;
  try {
    return shape.safeParse(JSON.parse(kept)).data;
  } catch {
    return undefined;
  }
}
