import { z } from 'zod';
import { shop, sign } from '../../../knowledge/schema.ts';

/** What one may add. */
export type OwnKind = 'sign' | 'shop';

/** One field of an entry, as its schema describes it. */
export type FieldShape = { name: string; required: boolean } & (
  | { as: 'text'; sentence: boolean }
  | { as: 'number' | 'flag' | 'list' | 'lists' | 'figure' | 'figures' | 'years' }
  | { as: 'choice' | 'several'; options: readonly string[] }
  | { as: 'object' | 'rows'; fields: readonly FieldShape[] }
);

type JsonSchema = {
  type?: string;
  enum?: string[];
  pattern?: string;
  properties?: Record<string, JsonSchema>;
  required?: string[];
  items?: JsonSchema | boolean;
  prefixItems?: JsonSchema[];
  anyOf?: JsonSchema[];
  additionalProperties?: JsonSchema | boolean;
};

/** The fields of a sign or a shop, read from the schema that its file is checked with. */
export function fieldShapes(kind: OwnKind): FieldShape[] {
  const schema = z.toJSONSchema(kind === 'sign' ? sign : shop, { io: 'input' }) as JsonSchema;
  return fieldsIn(schema).filter((field) => field.name !== 'id');
}

function fieldsIn({ properties = {}, required = [] }: JsonSchema): FieldShape[] {
  return Object.entries(properties).map(([name, schema]) => {
    const field: FieldShape = { ...shapeOf(schema), name, required: required.includes(name) };
    return field;
  });
}

type Shape = FieldShape extends infer Each
  ? Each extends unknown
    ? Omit<Each, 'name' | 'required'>
    : never
  : never;

function shapeOf(schema: JsonSchema): Shape {
  if (isFigure(schema)) return { as: 'figure' };
  if (schema.type === 'boolean') return { as: 'flag' };
  if (schema.type === 'number' || schema.type === 'integer') return { as: 'number' };
  if (schema.type === 'array') return arrayShape(schema);
  if (schema.type === 'object' && schema.properties !== undefined)
    return { as: 'object', fields: fieldsIn(schema) };
  if (schema.type === 'object' && typeof schema.additionalProperties === 'object')
    return { as: schema.additionalProperties.type === 'array' ? 'lists' : 'figures' };
  if (schema.enum !== undefined) return { as: 'choice', options: schema.enum };
  return { as: 'text', sentence: schema.pattern === '[.?!]$' };
}

function arrayShape({ items, prefixItems }: JsonSchema): Shape {
  if (prefixItems !== undefined) return { as: 'years' };
  if (typeof items !== 'object') return { as: 'list' };
  if (items.enum !== undefined) return { as: 'several', options: items.enum };
  return items.properties === undefined ? { as: 'list' } : { as: 'rows', fields: fieldsIn(items) };
}

/** A figure is an entry with `in100`, or its text alone. */
function isFigure({ anyOf }: JsonSchema): boolean {
  return anyOf?.some((each) => each.properties?.in100 !== undefined) ?? false;
}
