import { citations } from './checks/citations.ts';
import { type Entry, soundEntries } from './entry.ts';
import { figuresOf } from './figuresOf.ts';

/** On whose word a figure stands. `counted`: records were counted; `source` is a published work; the rest are as the file says. */
export type Word = 'counted' | 'source' | 'common practice' | 'judgement' | 'from memory' | 'nobody';

/** How many figures stand on whose word, and which entries cite no published work at all. */
export type WordCount = {
  figures: Record<Word, number>;
  /** The same for the spans of years in which things were in use. */
  spans: Record<Word, number>;
  withoutWork: { kind: Entry['kind']; id: string; file: string; line: number }[];
};

/**
 * Counts on whose word the figures stand.
 *
 * A figure's own word goes before its entry's basis. Where a source and a judgement stand together (the source shows
 * that the thing occurs, the share is judged), the figure counts as judged: a work that prints no share is not its source.
 * A figure that carries `counts` is counted, whatever was judged before.
 */
export function onWhoseWord(entries: readonly Entry[]): WordCount {
  const none = { counted: 0, source: 0, 'common practice': 0, judgement: 0, 'from memory': 0, nobody: 0 };
  const [figures, spans] = [{ ...none }, { ...none }];
  for (const entry of entries) {
    const { basis: entryBasis, span } = (entry.value ?? {}) as { basis?: Sourced; span?: Sourced };
    const basis = wordOf(entryBasis);
    if (span !== undefined) spans[wordOf(span) ?? basis ?? 'nobody']++;
    for (const { figure } of figuresOf(entry.value))
      figures[figure.counts === undefined ? (wordOf(figure) ?? basis ?? 'nobody') : 'counted']++;
  }
  const figured = (['sign', 'form', 'alteration', 'shop', 'making'] as const).flatMap((kind) =>
    soundEntries<Entry['kind']>(entries, kind),
  );
  return {
    figures,
    spans,
    withoutWork: figured
      .filter((entry) => citations(entry).length === 0)
      .map((entry) => ({ kind: entry.kind, id: entry.id, file: entry.file, line: entry.lineOf(['id']) })),
  };
}

type Sourced = {
  source?: string | undefined;
  by?: Exclude<Word, 'counted' | 'source' | 'nobody'> | undefined;
};

function wordOf(word: Sourced | undefined): Word | undefined {
  return word?.by ?? (word?.source === undefined ? undefined : 'source');
}
