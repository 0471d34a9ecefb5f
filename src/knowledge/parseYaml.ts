import { isMap, isScalar, isSeq, LineCounter, type Node, parseDocument } from 'yaml';

/** A path into a YAML file: keys and indices. */
export type YamlPath = readonly PropertyKey[];

/** A YAML file as plain values that still know their lines. */
export type ParsedYaml = {
  value: unknown;
  /** The line (from 1) on which the value at a path begins; where it is missing, the line of what should hold it. */
  lineOf: (path: YamlPath) => number;
  faults: { line: number; message: string }[];
};

/**
 * Reads YAML 1.2 by the core schema, strictly: `no` and `2020-01-02` stay text, a doubled key is a fault.
 *
 * @returns value undefined where the text can't be read; then there is at least one fault
 */
export function parseYaml(text: string): ParsedYaml {
  const counter = new LineCounter();
  const document = parseDocument(text, {
    version: '1.2',
    schema: 'core',
    strict: true,
    uniqueKeys: true,
    prettyErrors: false,
    lineCounter: counter,
  });
  const lineAt = (offset: number) => Math.max(1, counter.linePos(offset).line);
  const faults = [...document.errors, ...document.warnings].map((error) => ({
    line: lineAt(error.pos[0]),
    message: error.message,
  }));
  return {
    value: faults.length > 0 ? undefined : document.toJS(),
    lineOf: (path) => lineAt(offsetOf(document.contents, path)),
    faults,
  };
}

/** Where the value at a path begins, or the deepest holder that is there. */
function offsetOf(root: Node | null, path: YamlPath): number {
  let node: unknown = root;
  let offset = root?.range?.[0] ?? 0;
  for (const step of path) {
    if (isMap(node)) {
      const pair = node.items.find((each) => isScalar(each.key) && String(each.key.value) === String(step));
      if (pair === undefined) return offset;
      offset = startOf(pair.key, offset);
      node = pair.value;
    } else if (isSeq(node)) {
      node = node.items[Number(step)];
      if (node === undefined) return offset;
      offset = startOf(node, offset);
    } else return offset;
  }
  return offset;
}

function startOf(node: unknown, otherwise: number): number {
  const range = (node as { range?: [number, number, number] | null } | null)?.range;
  return range?.[0] ?? otherwise;
}
