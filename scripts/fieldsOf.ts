type Schema = {
  type?: string | string[];
  properties?: Record<string, Schema>;
  required?: string[];
  items?: Schema | false;
  prefixItems?: Schema[];
  additionalProperties?: Schema | boolean;
  anyOf?: Schema[];
  oneOf?: Schema[];
  enum?: unknown[];
  const?: unknown;
  default?: unknown;
  $ref?: string;
};

/** A list of a JSON Schema's fields in words: name, shape, whether it may be left out. One line where it has none. */
export function fieldsOf(schema: unknown): string[] {
  const { properties, required = [] } = schema as Schema;
  if (!properties) return [`A list: \`${shapeOf(schema as Schema)}\``];
  return Object.entries(properties).map(([name, field]) => {
    const leave = required.includes(name)
      ? ''
      : field.default === undefined
        ? '; may be left out'
        : `; \`${JSON.stringify(field.default)}\` when left out`;
    return `- \`${name}\`: \`${shapeOf(field)}\`${leave}`;
  });
}

function shapeOf(schema: Schema): string {
  if (schema.const !== undefined) return JSON.stringify(schema.const);
  if (schema.enum) return schema.enum.map((each) => JSON.stringify(each)).join(' | ');
  const kinds = schema.anyOf ?? schema.oneOf;
  if (kinds) return kinds.map(shapeOf).join(' | ');
  if (schema.prefixItems) return `[${schema.prefixItems.map(shapeOf).join(', ')}]`;
  if (schema.items) return `[${shapeOf(schema.items)}, …]`;
  if (schema.properties) {
    const fields = Object.entries(schema.properties).map(
      ([name, field]) => `${name}${schema.required?.includes(name) ? '' : '?'}: ${shapeOf(field)}`,
    );
    return `{ ${fields.join(', ')} }`;
  }
  if (typeof schema.additionalProperties === 'object')
    return `{ name: ${shapeOf(schema.additionalProperties)}, … }`;
  const types = Array.isArray(schema.type) ? schema.type : [schema.type ?? 'anything'];
  return types.map((type) => plainTypes[type] ?? type).join(' | ');
}

const plainTypes: Record<string, string> = { integer: 'whole number', string: 'text' };
