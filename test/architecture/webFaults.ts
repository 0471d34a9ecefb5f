import { parseSync } from 'vite';

/** A sign id or a judged figure that stands in a screen. */
export type WebFault = { path: string; line: number; what: string };

/**
 * Knowledge that leaked into a screen: the id of a sign, a number given to something whose name says that it is a likelihood, odds
 * or an uncertainty, and a comment that owns to a judgement; and a screen that reaches into the browser's stores by itself.
 *
 * @param signs  every id of the knowledge
 */
export function webFaults(path: string, source: string, signs: ReadonlySet<string>): WebFault[] {
  const { program, comments } = parseSync(path, source);
  const faults: WebFault[] = [];
  const note = (at: number, what: string) =>
    faults.push({ path, line: source.slice(0, at).split('\n').length, what });
  const walk = (node: unknown, isJudged: boolean): void => {
    if (Array.isArray(node)) for (const each of node) walk(each, isJudged);
    if (!isNode(node) || node.type === 'ImportDeclaration') return;
    const { value } = node;
    if (node.type === 'Literal' && typeof value === 'string' && signs.has(value))
      note(node.start, `It names the sign ${value}: say in knowledge/measurements.yaml what speaks of it.`);
    if (node.type === 'TemplateElement' && signs.has((value as { cooked?: string }).cooked ?? ''))
      note(node.start, 'It names a sign: say in knowledge/measurements.yaml what speaks of it.');
    if (node.type === 'Literal' && typeof value === 'number' && isJudged && value !== 0 && value !== 1)
      note(node.start, `It judges ${value}: the figure belongs in knowledge/measurements.yaml.`);
    const { name } = node as { name?: unknown };
    if (node.type === 'Identifier' && isStore(name) && !path.startsWith('src/web/drawer/'))
      note(node.start, `It reaches into ${name}: what is kept in the browser goes through src/web/drawer.`);
    const named = judgedPart(node, source);
    for (const [key, each] of Object.entries(node))
      if (key !== 'type') walk(each, key === named || (isJudged && node.type !== 'MemberExpression'));
  };
  walk(program, false);
  for (const comment of comments)
    if (/\bjudge?ments?\b|\bjudged\b|\bour (own )?figure\b/i.test(comment.value))
      note(comment.start, 'It owns to a judgement: the figure belongs in knowledge/measurements.yaml.');
  return faults;
}

const judged = /likelihood|odds|sigma|allowance|prior$|doubt(Mm|Px)/i;

/** The part of a node that holds what a judged name is given. */
function judgedPart(node: Node, source: string): string | undefined {
  const textOf = (part: unknown) => (isNode(part) ? source.slice(part.start, part.end as number) : '');
  if (node.type === 'VariableDeclarator' && judged.test(textOf(node.id)) && holdsFigures(node.init))
    return 'init';
  if (node.type === 'Property' && judged.test(textOf(node.key))) return 'value';
  if (node.type === 'LogicalExpression' && node.operator === '??' && isNamed(node.left))
    return judged.test(textOf(node.left)) ? 'right' : undefined;
  return undefined;
}

/** A number, a record or list of them, or what a state begins with; not what is worked out. */
function holdsFigures(init: unknown): boolean {
  if (!isNode(init)) return false;
  if (['Literal', 'ObjectExpression', 'ArrayExpression', 'TSAsExpression'].includes(init.type)) return true;
  return init.type === 'CallExpression' && isNode(init.callee) && init.callee.name === 'useState';
}

/** A name, or a field of something: not what a call gives back. */
function isNamed(part: unknown): boolean {
  return isNode(part) && ['Identifier', 'MemberExpression', 'ChainExpression'].includes(part.type);
}

type Node = { type: string; start: number; [key: string]: unknown };

function isNode(value: unknown): value is Node {
  return typeof value === 'object' && value !== null && typeof (value as Node).type === 'string';
}

function isStore(name: unknown): boolean {
  return name === 'localStorage' || name === 'sessionStorage';
}
