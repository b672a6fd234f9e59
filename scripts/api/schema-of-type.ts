import ts from 'typescript';

export type JsonSchema = Record<string, unknown>;

/** A union that is longer as JSON is told under its name, not everywhere anew. */
const WORTH_A_NAME = 600;

/** Schemas of the types that have a name, and where a type says nothing. */
export interface Schemas {
  /** The schema of what a value of this type is as JSON. */
  of(type: ts.Type): JsonSchema;
  /** Every named one that was met, by name. */
  named: Map<string, JsonSchema>;
  /** Where a type does not say: the way there from what is answered. */
  unstated: Set<string>;
}

/**
 * JSON Schema (2020-12) of TypeScript types, as `JSON.stringify` writes their values: what is not stated as optional is
 * there, a member that may be `undefined` may be absent, methods are left out, a Map is an object and a Set a list. Objects may
 * hold more than their type says.
 */
export function schemasOfTypes(checker: ts.TypeChecker): Schemas {
  const named = new Map<string, JsonSchema>();
  const names = new Map<ts.Symbol, string>();
  const way: string[] = [];
  const unstated = new Set<string>();
  const told = new Set<ts.Type>();
  const holdThemselves = new Set<ts.Type>();

  function of(type: ts.Type): JsonSchema {
    const { flags } = type;
    if (flags & (ts.TypeFlags.Any | ts.TypeFlags.Unknown)) {
      unstated.add(way.join('.'));
      return {};
    }
    if (flags & ts.TypeFlags.Null) return { type: 'null' };
    if (flags & (ts.TypeFlags.Undefined | ts.TypeFlags.Void)) return { not: {} };
    if (type.isStringLiteral() || type.isNumberLiteral()) return { const: type.value };
    if (flags & ts.TypeFlags.BooleanLiteral) return { const: checker.typeToString(type) === 'true' };
    if (flags & ts.TypeFlags.StringLike) return { type: 'string' };
    if (flags & ts.TypeFlags.NumberLike) return { type: 'number' };
    if (flags & ts.TypeFlags.BooleanLike && !type.isUnion()) return { type: 'boolean' };
    if (type.isUnion()) return ofUnion(type);
    // a branded text is a text
    if (type.isIntersection()) {
      const plain = type.types.find((one) => one.flags & (ts.TypeFlags.StringLike | ts.TypeFlags.NumberLike));
      if (plain) return of(plain);
      // a list that is told twice, once as one that nobody may change, is the narrower of both
      const list = type.types.findLast((one) => checker.isArrayType(one));
      if (list) return of(list);
    }
    return ofObject(type);
  }

  /** A long union, and one that holds itself, as a condition holds conditions, is told once under its name. */
  function ofUnion(type: ts.UnionType): JsonSchema {
    const own = (): JsonSchema => {
      const name = nameFor(type, type.aliasSymbol);
      if (name === null) throw new Error(`a union that holds itself has no name: ${way.join('.')}`);
      return { $ref: `#/components/schemas/${name}` };
    };
    if (told.has(type)) {
      holdThemselves.add(type);
      return own();
    }
    told.add(type);
    const schema = partsOf(type);
    told.delete(type);
    const name = nameFor(type, type.aliasSymbol);
    if (!holdThemselves.has(type) && (name === null || JSON.stringify(schema).length < WORTH_A_NAME))
      return schema;
    const ref = own();
    named.set(String(ref.$ref).split('/').at(-1) ?? '', schema);
    return ref;
  }

  function partsOf(type: ts.UnionType): JsonSchema {
    const parts = type.types.filter((one) => !(one.flags & (ts.TypeFlags.Undefined | ts.TypeFlags.Void)));
    const every = parts.map(of).map((one) => [JSON.stringify(one), one] as const);
    const schemas = [...new Map(every).values()];
    const constants = schemas.filter((one) => 'const' in one).map((one) => one.const);
    const others = schemas.filter((one) => !('const' in one));
    const both = constants.includes(true) && constants.includes(false);
    const left = both ? constants.filter((one) => typeof one !== 'boolean') : constants;
    const all: JsonSchema[] = [
      ...(both ? [{ type: 'boolean' }] : []),
      ...(left.length === 1 ? [{ const: left[0] }] : left.length > 1 ? [{ enum: left }] : []),
      ...others,
    ];
    const [only] = all;
    if (all.length === 1 && only) return only;
    const simple = all.every((one) => Object.keys(one).length === 1 && typeof one.type === 'string');
    return simple ? { type: all.map((one) => one.type) } : { anyOf: all };
  }

  function ofObject(type: ts.Type): JsonSchema {
    if (checker.isTupleType(type)) {
      const members = checker.getTypeArguments(type as ts.TypeReference);
      return {
        type: 'array',
        prefixItems: members.map(of),
        minItems: members.length,
        maxItems: members.length,
      };
    }
    if (checker.isArrayType(type)) {
      const [member] = checker.getTypeArguments(type as ts.TypeReference);
      return { type: 'array', items: member ? within('[]', member) : {} };
    }
    const symbol = type.aliasSymbol ?? type.getSymbol();
    if (symbol && /^(Readonly)?(Map|Set)$/.test(symbol.name)) return ofCollection(symbol.name, type);
    if (symbol?.name === 'Date') return { type: 'string', format: 'date-time' };
    const name = nameFor(type, symbol);
    if (name === null) return shape(type);
    if (!named.has(name)) {
      named.set(name, {});
      const here = way.splice(0, way.length, name);
      named.set(name, shape(type));
      way.splice(0, way.length, ...here);
    }
    return { $ref: `#/components/schemas/${name}` };
  }

  /** As `readAnswer` writes them: what is held by name is an object, and a set is a list. */
  function ofCollection(name: string, type: ts.Type): JsonSchema {
    const members = checker.getTypeArguments(type as ts.TypeReference);
    const [first, second] = members;
    if (name.endsWith('Set')) return { type: 'array', items: first ? within('[]', first) : {} };
    return { type: 'object', additionalProperties: second ? within('*', second) : {} };
  }

  /** A name of its own for an interface or an alias that is no generic one; others are written where they stand. */
  function nameFor(type: ts.Type, symbol: ts.Symbol | undefined): string | null {
    if (!symbol || symbol.name.startsWith('__') || type.aliasTypeArguments?.length) return null;
    if ((type as ts.TypeReference).typeArguments?.length) return null;
    const known = names.get(symbol);
    if (known) return known;
    const taken = new Set(names.values());
    let name = symbol.name;
    for (let at = 2; taken.has(name); at += 1) name = `${symbol.name}${at}`;
    names.set(symbol, name);
    return name;
  }

  function shape(type: ts.Type): JsonSchema {
    const properties: Record<string, JsonSchema> = {};
    const required: string[] = [];
    for (const property of checker.getPropertiesOfType(type)) {
      if (property.name.startsWith('__@')) continue;
      const its = checker.getTypeOfSymbol(property);
      if (its.getCallSignatures().length > 0) continue;
      const maybe = Boolean(property.flags & ts.SymbolFlags.Optional) || mayBeUndefined(its);
      properties[property.name] = within(property.name, its);
      if (!maybe) required.push(property.name);
    }
    const index = checker.getIndexInfoOfType(type, ts.IndexKind.String);
    return {
      type: 'object',
      ...(Object.keys(properties).length > 0 ? { properties } : {}),
      ...(required.length > 0 ? { required } : {}),
      ...(index ? { additionalProperties: within('*', index.type) } : {}),
    };
  }

  const mayBeUndefined = (type: ts.Type) =>
    type.isUnion() && type.types.some((one) => one.flags & ts.TypeFlags.Undefined);

  function within(step: string, type: ts.Type): JsonSchema {
    way.push(step);
    try {
      return of(type);
    } finally {
      way.pop();
    }
  }

  return { of, named, unstated };
}
