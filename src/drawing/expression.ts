/** Lengths by name, in millimetres. */
export type Lengths = Readonly<Record<string, number>>;

/** An expression's value, or what is wrong with it. */
export type ExpressionResult = { ok: true; value: number } | { ok: false; message: string };

/**
 * What a sum over named lengths comes to: numbers, names, `+ - * /`, parentheses, a leading minus, and the smaller or
 * larger of several with `min(…)` and `max(…)`. Nothing else can be written, so a knowledge file can't run anything.
 *
 * @param text     e.g. `seatHeight-(railDepth+6)/2`
 * @param lengths  what each name stands for
 * @returns the value, finite; or a sentence that says what is wrong and at which character
 * @source ours: a descent through sum, product, sign and atom
 */
export function evaluate(text: string, lengths: Lengths): ExpressionResult {
  const tokens = tokenize(text);
  if (typeof tokens === 'string') return { ok: false, message: tokens };
  const reader = { text, tokens, at: 0, depth: 0, lengths };
  try {
    const value = sum(reader);
    if (reader.at < tokens.length)
      throw new ExpressionFault(`"${text}": "${tokens[reader.at]?.text}" can't stand here.`);
    if (!Number.isFinite(value))
      throw new ExpressionFault(`"${text}" divides by nothing or runs out of bounds.`);
    return { ok: true, value };
  } catch (error) {
    if (error instanceof ExpressionFault) return { ok: false, message: error.message };
    throw error;
  }
}

class ExpressionFault extends Error {}

type Token = { kind: 'number' | 'name' | 'sign'; text: string };
type Reader = { text: string; tokens: readonly Token[]; at: number; depth: number; lengths: Lengths };

/** How many parentheses and minuses may stand inside each other. */
const deepest = 50;

const tokenForms: readonly [Token['kind'], RegExp][] = [
  ['number', /^(\d+\.?\d*|\.\d+)/],
  ['name', /^[a-zA-Z][a-zA-Z0-9]*/],
  ['sign', /^[-+*/(),]/],
];

function tokenize(text: string): Token[] | string {
  const tokens: Token[] = [];
  let rest = text.trimStart();
  while (rest !== '') {
    const found = tokenForms
      .map(([kind, form]) => ({ kind, text: form.exec(rest)?.[0] }))
      .find((each) => each.text !== undefined);
    if (found?.text === undefined)
      return `"${text}": the sign "${rest[0]}" has no meaning in a length; use names, numbers, + - * / and parentheses.`;
    tokens.push({ kind: found.kind, text: found.text });
    rest = rest.slice(found.text.length).trimStart();
  }
  return tokens.length === 0 ? 'A length is missing.' : tokens;
}

function take(reader: Reader, ...signs: string[]): string | undefined {
  const token = reader.tokens[reader.at];
  if (token?.kind !== 'sign' || !signs.includes(token.text)) return undefined;
  reader.at += 1;
  return token.text;
}

function sum(reader: Reader): number {
  let value = product(reader);
  for (let sign = take(reader, '+', '-'); sign !== undefined; sign = take(reader, '+', '-')) {
    const next = product(reader);
    value = sign === '+' ? value + next : value - next;
  }
  return value;
}

function product(reader: Reader): number {
  let value = signed(reader);
  for (let sign = take(reader, '*', '/'); sign !== undefined; sign = take(reader, '*', '/')) {
    const next = signed(reader);
    value = sign === '*' ? value * next : value / next;
  }
  return value;
}

function signed(reader: Reader): number {
  reader.depth += 1;
  if (reader.depth > deepest)
    throw new ExpressionFault(`A length has more than ${deepest} parentheses or minuses inside each other.`);
  const value = take(reader, '-') === undefined ? atom(reader) : -signed(reader);
  reader.depth -= 1;
  return value;
}

function atom(reader: Reader): number {
  const token = reader.tokens[reader.at];
  if (take(reader, '(') !== undefined) {
    const value = sum(reader);
    closeBracket(reader);
    return value;
  }
  if (token === undefined || token.kind === 'sign')
    throw new ExpressionFault(
      `"${reader.text}": a number or name is missing ${token === undefined ? 'at the end' : `before "${token.text}"`}.`,
    );
  reader.at += 1;
  if (token.kind === 'number') return Number(token.text);
  if (take(reader, '(') !== undefined) return chosen(reader, token.text);
  const value = Object.hasOwn(reader.lengths, token.text) ? reader.lengths[token.text] : undefined;
  if (value === undefined)
    throw new ExpressionFault(
      `"${reader.text}": no measure or length is called "${token.text}"; correct the name or add it to the lengths.`,
    );
  return value;
}

function chosen(reader: Reader, name: string): number {
  if (name !== 'min' && name !== 'max')
    throw new ExpressionFault(
      `"${reader.text}": only min(…) and max(…) take several lengths, not "${name}".`,
    );
  const values = [sum(reader)];
  while (take(reader, ',') !== undefined) values.push(sum(reader));
  closeBracket(reader);
  return name === 'min' ? Math.min(...values) : Math.max(...values);
}

function closeBracket(reader: Reader): void {
  if (take(reader, ')') === undefined)
    throw new ExpressionFault(`"${reader.text}": a parenthesis is not closed.`);
}
