import type { Entry } from './entry.ts';
import { expandGroups } from './expandGroups.ts';
import { entrySchemas, type FileKind, fileKind } from './fileKind.ts';
import type { KnowledgeFault } from './knowledgeFault.ts';
import { parseYaml, type YamlPath } from './parseYaml.ts';

/** One knowledge file: its path from the knowledge folder, and its text. `mine` for a file of the user's own. */
export type KnowledgeFile = { path: string; text: string; mine?: boolean };

/** A family heading of a sign file. */
export type Family = { id: string; name: string; file: string };

/** Reads files into entries that know their lines; what can't be read at all comes back as faults. */
export function readEntries(files: readonly KnowledgeFile[]): {
  entries: Entry[];
  families: Family[];
  faults: KnowledgeFault[];
} {
  const entries: Entry[] = [];
  const families: Family[] = [];
  const faults: KnowledgeFault[] = [];
  for (const file of files) {
    const kind = fileKind(file.path);
    if (kind === undefined) {
      faults.push(misplaced(file.path));
      continue;
    }
    const parsed = parseYaml(file.text);
    faults.push(...parsed.faults.map((fault) => unreadable(file.path, fault)));
    if (parsed.faults.length > 0) continue;
    const fault = headingFault(file.path, kind, parsed.value);
    if (fault !== undefined) {
      faults.push(fault);
      continue;
    }
    entries.push(...entriesIn(file, kind, parsed.value, parsed.lineOf));
    if (kind.kind === 'sign') {
      const { family, name } = parsed.value as { family: string; name: string };
      families.push({ id: family, name, file: file.path });
    }
  }
  return { entries: expandGroups(entries), families, faults };
}

function entriesIn(
  file: KnowledgeFile,
  kind: FileKind,
  value: unknown,
  lineOf: (path: YamlPath) => number,
): Entry[] {
  const mine = file.mine === true || /(^|\/)mine-[^/]*$/.test(file.path);
  const holder = value as Record<string, unknown>;
  const items = kind.list === undefined ? [value] : (holder[kind.list] as unknown[]);
  return items.map((raw, index) => {
    const at: YamlPath = kind.list === undefined ? [] : [kind.list, index];
    const parsed = entrySchemas[kind.kind].safeParse(raw);
    return {
      kind: kind.kind,
      id: idOf(raw) ?? (kind.list === undefined ? fileName(file.path) : `entry ${index + 1}`),
      file: file.path,
      family: typeof holder.family === 'string' ? holder.family : '',
      mine,
      raw,
      value: parsed.success ? parsed.data : undefined,
      issues: parsed.success ? [] : parsed.error.issues,
      lineOf: (path) => lineOf([...at, ...path]),
    };
  });
}

/** `making` for making.yaml: what stands in for the id of an entry that is its whole file. */
function fileName(path: string): string {
  return path.replace(/^.*\//, '').replace(/\.yaml$/, '');
}

function idOf(raw: unknown): string | undefined {
  const id = (raw as { id?: unknown } | null)?.id;
  return typeof id === 'string' ? id : undefined;
}

function headingFault(file: string, kind: FileKind, value: unknown): KnowledgeFault | undefined {
  const fault = (what: string, mend: string): KnowledgeFault => ({
    code: 'knowledge.file-form',
    file,
    line: 1,
    entry: '',
    what,
    mend,
    example: [...kind.headings.map((heading) => `${heading}: …`), `${kind.list ?? 'id'}:`].join('\n'),
  });
  if (value === null || typeof value !== 'object' || Array.isArray(value))
    return fault(
      'The file does not begin with named fields.',
      'Begin each line with a field name and a colon.',
    );
  const holder = value as Record<string, unknown>;
  if (kind.list === undefined) return undefined;
  const unknown = Object.keys(holder).find((key) => key !== kind.list && !kind.headings.includes(key));
  if (unknown !== undefined)
    return fault(
      `The file has a field "${unknown}" that means nothing here.`,
      'Take it out, or indent it under its entry.',
    );
  const missing = kind.headings.find((heading) => typeof holder[heading] !== 'string');
  if (missing !== undefined)
    return fault(`The file does not say its ${missing}.`, `Write "${missing}: …" above the list.`);
  if (!Array.isArray(holder[kind.list]) || (holder[kind.list] as unknown[]).length === 0)
    return fault(
      `The file has no list under "${kind.list}:".`,
      `Write "${kind.list}:" and the entries below it, each after a dash.`,
    );
  return undefined;
}

function misplaced(file: string): KnowledgeFault {
  return {
    code: 'knowledge.file-place',
    file,
    line: 1,
    entry: '',
    what: 'The file stands where no knowledge is looked for.',
    mend: 'Move it to forms/, signs/, sign-drawings/, alterations/ or shops/, or name it making.yaml, part-kinds.yaml, asks.yaml, woods.yaml, wood-movement.yaml, consumer-prices.yaml, sources.yaml or sources-….yaml.',
    example: 'signs/saw-marks.yaml',
  };
}

function unreadable(file: string, fault: { line: number; message: string }): KnowledgeFault {
  return {
    code: 'knowledge.yaml',
    file,
    line: fault.line,
    entry: '',
    what: `The file can't be read as YAML: ${fault.message}.`,
    mend: 'Look for a missing quote, a colon inside unquoted words, a key written twice or a wrong indent near this line.',
    example: 'why: "Words with a colon: put them in quotes."',
  };
}
