import { useState } from 'react';
import type { z } from 'zod';
import { keep, names, readKeptAs } from './drawer.ts';

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
  const [draft, setDraft] = useState(() => readKeptAs(names.bench(name), shape) ?? empty());
  const type = (next: Draft) => {
    setDraft(next);
    keep(names.bench(name), JSON.stringify(next));
  };
  return [draft, type];
}
