import type { z } from 'zod';
import type { Fault } from '../ground/fault.ts';
import { counted } from '../ground/words.ts';

type Issue = z.core.$ZodIssue;

/**
 * What a schema found wrong, in plain sentences with the path of the field: `findings[0].sign`.
 *
 * @param issues  the schema's issues
 * @param input   what was checked, so that a missing field is told from a wrong one
 */
export function inputFaults(issues: readonly Issue[], input: unknown): Fault[] {
  const faults = issues.flatMap((issue) => faultsOf(issue, issue.path, input));
  // A number past what a whole number can be is past the field’s own bound too, which says more.
  const saysLess = ({ message }: Fault) =>
    [smallerWhole, largerWhole].some((each) => message.endsWith(`write ${each}.`));
  return faults.filter(
    (one) => !saysLess(one) || faults.every((other) => other === one || other.path !== one.path),
  );
}

const smallerWhole = 'a smaller whole number';
const largerWhole = 'a larger whole number';

function faultsOf(issue: Issue, path: readonly PropertyKey[], input: unknown): Fault[] {
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) =>
      fault(
        'unknown-field',
        [...path, key],
        `There is no field “${key}” here: take it out, or mend its name.`,
      ),
    );
  }
  const found = valueAt(input, path);
  if (found === undefined) return [fault('missing', path, `This field is missing: add ${wanted(issue)}.`)];
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const nearest = deepest(issue.errors);
    if (nearest.some((each) => each.path.length > 0)) {
      return nearest.flatMap((each) => faultsOf(each, [...path, ...each.path], input));
    }
  }
  return [fault('wrong-value', path, sentence(issue, found))];
}

function sentence(issue: Issue, found: unknown): string {
  const here = described(found);
  if (issue.code === 'invalid_format' && issue.message && !issue.message.startsWith('Invalid')) {
    return `${here} can’t stand here: ${issue.message}.`;
  }
  return `${here} can’t stand here: write ${wanted(issue)}.`;
}

function wanted(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return kinds[issue.expected] ?? issue.expected;
    case 'too_small':
      if (Number(issue.minimum) === Number.MIN_SAFE_INTEGER) return largerWhole;
      return sized(issue.origin, issue.inclusive === false ? 'more than' : 'at least', Number(issue.minimum));
    case 'too_big':
      if (Number(issue.maximum) === Number.MAX_SAFE_INTEGER) return smallerWhole;
      return sized(issue.origin, issue.inclusive === false ? 'less than' : 'at most', Number(issue.maximum));
    case 'invalid_value':
      return oneOf(issue.values.map(String));
    case 'invalid_union':
      if ('options' in issue && Array.isArray(issue.options)) return oneOf(issue.options.map(String));
      return issue.errors.length === 0 ? 'one of the kinds there are' : either(issue.errors);
    case 'invalid_key':
      return 'names that are not empty';
    case 'not_multiple_of':
      return `a multiple of ${issue.divisor}`;
    case 'invalid_format':
      return 'it in the form it has in the example';
    default:
      return 'what the schema asks for';
  }
}

const kinds: Record<string, string> = {
  number: 'a number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a list',
  object: 'an object with fields',
  record: 'an object with fields',
  null: 'null',
};

function sized(origin: string, bound: string, size: number): string {
  if (origin === 'array') return `${bound} ${counted(size, 'entry', 'entries')}`;
  if (origin === 'string') return `${bound} ${counted(size, 'sign')}`;
  return `a number of ${bound} ${size}`.replace('of more than', 'above').replace('of less than', 'below');
}

function oneOf(values: readonly string[]): string {
  return values.length === 1 ? `“${values[0]}”` : `one of ${values.join(', ')}`;
}

function either(errors: readonly (readonly Issue[])[]): string {
  return [...new Set(errors.flatMap((issues) => issues.slice(0, 1).map(wanted)))].join(' or ');
}

/** The reading of a union that got furthest: what the person most likely meant. */
function deepest(errors: readonly (readonly Issue[])[]): readonly Issue[] {
  const depth = (issues: readonly Issue[]) => Math.max(0, ...issues.map((issue) => issue.path.length));
  return errors.reduce((best, each) => (depth(each) > depth(best) ? each : best));
}

function described(found: unknown): string {
  if (found === null) return 'null';
  if (Array.isArray(found)) return found.length === 0 ? 'An empty list' : `A list of ${found.length}`;
  if (typeof found === 'object') return 'An object with fields';
  if (typeof found === 'string')
    return found === '' ? 'An empty text' : `“${found.length > 40 ? `${found.slice(0, 40)}…` : found}”`;
  return String(found);
}

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (at, key) =>
      typeof at === 'object' && at !== null ? (at as Record<PropertyKey, unknown>)[key] : undefined,
    input,
  );
}

function fault(what: string, path: readonly PropertyKey[], message: string): Fault {
  return { code: `input.${what}`, path: written(path), message };
}

function written(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, key) =>
      typeof key === 'number' ? `${text}[${key}]` : text === '' ? String(key) : `${text}.${String(key)}`,
    '',
  );
}
