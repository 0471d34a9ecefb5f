import type { Entry } from '../entry.ts';
import type { YamlPath } from '../parseYaml.ts';

/** Every work an entry cites, in `source` or `sources` at any depth, even where the entry is otherwise misshapen. */
export function citations(entry: Entry): { path: YamlPath; id: string }[] {
  return entry.kind === 'work' ? [] : citedIn(entry.raw, []);
}

function citedIn(value: unknown, path: YamlPath): { path: YamlPath; id: string }[] {
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, each]) => {
    const at = [...path, key];
    if (key === 'source' && typeof each === 'string') return [{ path: at, id: each }];
    if (key === 'sources' && Array.isArray(each))
      return each.map((id, index) => ({ path: [...at, index], id: String(id) }));
    return citedIn(each, at);
  });
}
