import { parseSync } from 'vite';
import { isPair, isScalar, LineCounter, parseDocument, visit } from 'yaml';

/** A text that a person may read, with where it stands. */
export type ShownText = { path: string; line: number; text: string };

/**
 * The texts of a file that a person may read: in code the words between tags and every string that is a phrase or
 * begins with a capital (ids, class names and imports are neither); in YAML the prose, without ids, drawings, titles of
 * works and what is quoted from them; in Markdown all but code and links.
 */
export function shownTexts(path: string, source: string): ShownText[] {
  if (/\.tsx?$/.test(path)) return ofCode(path, source);
  if (path.endsWith('.yaml')) return ofYaml(path, source);
  return source
    .replaceAll(/```[\s\S]*?```|`[^`\n]*`|\]\([^)\n]*\)/g, (code) => code.replaceAll(/[^\n]/g, ' '))
    .split('\n')
    .map((text, index) => ({ path, line: index + 1, text }));
}

/** A phrase, or a word that begins a label. */
function isProse(text: string): boolean {
  return /\s/.test(text.trim()) || /^[A-Z][a-z]/.test(text.trim());
}

type Node = { type: string; start: number; [key: string]: unknown };

const unread = new Set(['ImportDeclaration', 'ExportAllDeclaration', 'ImportExpression', 'TSLiteralType']);
const unreadAttributes = /^(className|id|to|htmlFor|name|d|href|key|style|viewBox|data-.*)$/;

function ofCode(path: string, source: string): ShownText[] {
  const found: ShownText[] = [];
  const note = (text: string, at: number) => {
    if (isProse(text)) found.push({ path, line: source.slice(0, at).split('\n').length, text });
  };
  const walk = (node: unknown): void => {
    if (Array.isArray(node)) node.forEach(walk);
    if (!isNode(node) || unread.has(node.type)) return;
    if (node.type === 'JSXAttribute' && unreadAttributes.test(nameOf(node))) return;
    if (node.type === 'JSXText' || (node.type === 'Literal' && typeof node.value === 'string'))
      note(`${node.value}`, node.start);
    if (node.type === 'TemplateLiteral')
      note((node.quasis as { value: { raw: string } }[]).map(({ value }) => value.raw).join('…'), node.start);
    for (const part of Object.values(node)) walk(part);
  };
  walk(parseSync(path, source, { lang: path.endsWith('x') ? 'tsx' : 'ts' }).program);
  return found;
}

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && 'type' in value;
}

function nameOf({ name }: Node): string {
  return (name as { name?: string }).name ?? '';
}

const unreadKeys = new Set(['id', 'at', 'by', 'path', 'view', 'source', 'sources', 'title', 'archive']);

function ofYaml(path: string, source: string): ShownText[] {
  const lines = new LineCounter();
  const found: ShownText[] = [];
  visit(parseDocument(source, { lineCounter: lines }), {
    Scalar(key, { value, range }, above) {
      if (key === 'key' || typeof value !== 'string' || !isProse(value)) return;
      const pair = above.findLast((each) => isPair(each));
      const field = isPair(pair) && isScalar(pair.key) ? `${pair.key.value}` : '';
      if (unreadKeys.has(field) || (path.includes('/sources') && field !== 'note')) return;
      found.push({ path, line: lines.linePos(range?.[0] ?? 0).line, text: value });
    },
  });
  return found;
}
