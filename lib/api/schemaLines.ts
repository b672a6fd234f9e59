/** One member of what is sent or answered, as a page shows it. */
export interface SchemaLine {
  /** The way to it: `asked.entry.name`, `lines[].itemId`. Empty for the whole. */
  path: string;
  /** What it is, in words. */
  is: string;
  needed: boolean;
  /** What the schema says of it beside. */
  note: string | null;
}

type Schema = {
  type?: string | string[];
  $ref?: string;
  const?: unknown;
  enum?: unknown[];
  anyOf?: Schema[];
  oneOf?: Schema[];
  allOf?: Schema[];
  properties?: Record<string, Schema>;
  required?: string[];
  items?: Schema;
  prefixItems?: Schema[];
  additionalProperties?: Schema | boolean;
  description?: string;
  minimum?: number;
  maximum?: number;
  minLength?: number;
  maxLength?: number;
  pattern?: string;
  format?: string;
};

/** No deeper: what lies further in is a thing of its own in the document. */
const DEEPEST = 5;
const MOST_LINES = 200;

/** The members of a JSON Schema one a line, with references looked up in `named` and followed once each way down. */
export function schemaLines(schema: object, named: Record<string, object>): SchemaLine[] {
  const lines: SchemaLine[] = [];
  walk(schema as Schema, '', true, [], 0);
  return lines.slice(0, MOST_LINES);

  function walk(raw: Schema, path: string, needed: boolean, followed: string[], depth: number): void {
    if (lines.length >= MOST_LINES) return;
    const name = raw.$ref?.split('/').at(-1);
    const one =
      name === undefined
        ? raw
        : {
            ...(named[name] as Schema | undefined),
            ...(raw.description ? { description: raw.description } : {}),
          };
    const again = name !== undefined && followed.includes(name);
    lines.push({
      path,
      is: again ? `${name}, as above` : wordsOf(one),
      needed,
      note: one.description ?? null,
    });
    if (again || depth >= DEEPEST) return;
    const on = name === undefined ? followed : [...followed, name];
    const choices = (one.anyOf ?? one.oneOf ?? []).filter((choice) => !isPlain(choice));
    for (const [at, choice] of choices.entries())
      walk(choice, choices.length > 1 ? `${path}(${at + 1})` : path, needed, on, depth + 1);
    for (const [member, inner] of Object.entries(one.properties ?? {}))
      walk(
        inner,
        path === '' ? member : `${path}.${member}`,
        one.required?.includes(member) ?? false,
        on,
        depth + 1,
      );
    if (one.items && !isPlain(one.items)) walk(one.items, `${path}[]`, true, on, depth + 1);
    if (typeof one.additionalProperties === 'object')
      walk(one.additionalProperties, `${path}.*`, false, on, depth + 1);
  }
}

const isPlain = (schema: Schema): boolean =>
  !(
    schema.properties ||
    schema.items ||
    schema.anyOf ||
    schema.oneOf ||
    schema.$ref ||
    schema.additionalProperties
  );

const TYPE_WORDS: Record<string, string> = {
  string: 'text',
  number: 'number',
  integer: 'whole number',
  boolean: 'true or false',
  null: 'null',
  object: 'object',
  array: 'list',
};

function wordsOf(one: Schema): string {
  if (one.const !== undefined) return JSON.stringify(one.const);
  if (one.enum) return one.enum.map((value) => JSON.stringify(value)).join(' or ');
  const choices = one.anyOf ?? one.oneOf;
  if (choices) {
    const said = [...new Set(choices.map((choice) => (choice.$ref ? nameOf(choice.$ref) : wordsOf(choice))))];
    return said.join(', or ');
  }
  if (one.items) return `list of ${one.items.$ref ? nameOf(one.items.$ref) : wordsOf(one.items)}`;
  const types =
    one.type === undefined ? ['any JSON'] : [one.type].flat().map((type) => TYPE_WORDS[type] ?? type);
  return [types.join(' or '), ...bounds(one)].join(', ');
}

const nameOf = (ref: string) => ref.split('/').at(-1) ?? ref;

function bounds(one: Schema): string[] {
  // the widest whole number of the language says nothing
  const most =
    one.maximum === undefined || Math.abs(one.maximum) >= Number.MAX_SAFE_INTEGER ? undefined : one.maximum;
  const least =
    one.minimum === undefined || Math.abs(one.minimum) >= Number.MAX_SAFE_INTEGER ? undefined : one.minimum;
  return [
    ...(least !== undefined ? [`at least ${least}`] : []),
    ...(most !== undefined ? [`at most ${most}`] : []),
    ...(one.minLength !== undefined && one.minLength > 0 ? [`at least ${letters(one.minLength)}`] : []),
    ...(one.maxLength !== undefined ? [`at most ${letters(one.maxLength)}`] : []),
    ...(one.format ? [one.format] : one.pattern ? [`like ${one.pattern}`] : []),
  ];
}

const letters = (count: number) => (count === 1 ? '1 letter' : `${count} letters`);
