import { type Around, brokenRules } from './invariants';
import { codesOf, type Element, regexOf, structureOf } from './structures';

/** What is wrong with a resource: where, and which rule of R5 it breaks. */
export interface Fault {
  at: string;
  rule: string;
}

type Json = Record<string, unknown>;
const isObject = (value: unknown): value is Json =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * Faults of a resource against HL7's own StructureDefinitions of FHIR R5: unknown elements, cardinalities, choices, types, how
 * primitives are written, required value sets, what references may lead to, and the published invariants. Value sets that are
 * not required, and what a reference leads to, are not asked.
 */
export function faultsOf(resource: unknown, within?: unknown): Fault[] {
  const type = isObject(resource) ? resource.resourceType : null;
  if (typeof type !== 'string') return [{ at: '', rule: 'no resourceType' }];
  if (structureOf(type)?.kind !== 'resource') return [{ at: type, rule: 'no such resource' }];
  const around: Around = { resource, rootResource: within ?? resource };
  return ofComplex(type, type, resource as Json, type, around);
}

/** Faults of an object of a type, or of one part of it: `path` is where its children are described. */
function ofComplex(type: string, path: string, value: Json, at: string, around: Around): Fault[] {
  const structure = structureOf(type);
  if (!structure) return [{ at, rule: `no structure of ${type}` }];
  if (Object.keys(value).length === 0) return [{ at, rule: 'empty' }];
  const faults: Fault[] = [];
  const known = new Set(structure.kind === 'resource' && path === type ? ['resourceType'] : []);
  for (const element of structure.under.get(path) ?? []) {
    const said = namesOf(element).filter(({ name }) => {
      known.add(name).add(`_${name}`);
      return value[name] !== undefined || value[`_${name}`] !== undefined;
    });
    if (said.length === 0 && element.min > 0)
      faults.push({ at: `${at}.${nameOf(element)}`, rule: 'lacking' });
    if (said.length > 1) faults.push({ at: `${at}.${nameOf(element)}`, rule: 'more than one choice' });
    for (const { name, as } of said)
      faults.push(...ofElement(element, type, as, { value, name, at: `${at}.${name}`, around }));
  }
  for (const key of Object.keys(value))
    if (!known.has(key)) faults.push({ at: `${at}.${key}`, rule: 'no such element' });
  const rules = path === type ? structure.root.rules : undefined;
  return [...faults, ...brokenRules(rules, path, value, around).map((rule) => ({ at, rule }))];
}

interface Said {
  value: Json;
  name: string;
  at: string;
  around: Around;
}

/** Faults of what is said under one name, however often. */
function ofElement(element: Element, owner: string, as: string, { value, name, at, around }: Said): Fault[] {
  const many = element.max !== '1' && element.max !== '0';
  const [plain, beside] = [value[name], value[`_${name}`]];
  if (element.max === '0') return [{ at, rule: 'not allowed' }];
  if (many !== Array.isArray(plain ?? beside)) return [{ at, rule: many ? 'not a list' : 'a list' }];
  const values: unknown[] = many ? ((plain as unknown[]) ?? []) : [plain];
  const besides: unknown[] = many ? ((beside as unknown[]) ?? []) : [beside];
  const length = Math.max(values.length, besides.length);
  if (length === 0) return [{ at, rule: 'an empty list' }];
  if (length < element.min || (element.max !== '*' && length > Number(element.max)))
    return [{ at, rule: 'too few or too many' }];
  return Array.from({ length }, (_, index) => index).flatMap((index) => {
    const place = many ? `${at}[${index}]` : at;
    const one = { value: values[index] ?? undefined, beside: besides[index] ?? undefined };
    return ofOne(element, owner, as, one, place, around);
  });
}

/** Faults of one value. `beside`: what a primitive has beside its value, an id or extensions. */
function ofOne(
  element: Element,
  owner: string,
  as: string,
  { value, beside }: { value: unknown; beside: unknown },
  at: string,
  around: Around,
): Fault[] {
  const rules = brokenRules(element.rules, element.path, value, around).map((rule) => ({ at, rule }));
  if (element.like !== undefined) {
    if (!isObject(value)) return [{ at, rule: 'not an object' }];
    return [...rules, ...ofComplex(owner, element.like, value, at, around)];
  }
  if (as === 'Resource') return [...rules, ...faultsOf(value, around.rootResource)];
  if (as === 'BackboneElement' || as === 'Element') {
    if (!isObject(value)) return [{ at, rule: 'not an object' }];
    return [...rules, ...ofComplex(owner, element.path, value, at, around)];
  }
  if (structureOf(as)?.kind !== 'primitive-type') {
    if (!isObject(value) || beside !== undefined) return [{ at, rule: `not a ${as}` }];
    return [
      ...rules,
      ...ofComplex(as, as, value, at, around),
      ...boundFault(element, value, at),
      ...targetFault(element, as, value, at),
    ];
  }
  const faults: Fault[] = [...rules];
  if (beside !== undefined) {
    if (!isObject(beside)) faults.push({ at, rule: 'not an object beside' });
    else faults.push(...ofBeside(beside, at, around));
  }
  if (value === undefined) {
    if (!isObject(beside) || beside.extension === undefined) faults.push({ at, rule: 'empty' });
    return faults;
  }
  if (!isWritten(as, value)) faults.push({ at, rule: `not a ${as}` });
  return [...faults, ...boundFault(element, value, at)];
}

function ofBeside(beside: Json, at: string, around: Around): Fault[] {
  const { id, extension, ...more } = beside;
  const faults = Object.keys(more).map((key) => ({ at: `${at}.${key}`, rule: 'no such element' }));
  if (id === undefined && extension === undefined) faults.push({ at, rule: 'empty' });
  const list = Array.isArray(extension) ? extension : [];
  return [
    ...faults,
    ...list.flatMap((one, index) =>
      isObject(one)
        ? ofComplex('Extension', 'Extension', one, `${at}.extension[${index}]`, around)
        : [{ at, rule: 'not a Extension' }],
    ),
  ];
}

const NUMBERS = new Set(['decimal', 'integer', 'unsignedInt', 'positiveInt']);

/** Whether a primitive is of its JSON kind and written as its regular expression says. */
function isWritten(primitive: string, value: unknown): boolean {
  const kind = primitive === 'boolean' ? 'boolean' : NUMBERS.has(primitive) ? 'number' : 'string';
  if (typeof value !== kind) return false;
  if (value === '') return false;
  if (DAYS.has(primitive) && !isDay(String(value))) return false;
  return regexOf(primitive)?.test(String(value)) ?? true;
}

const DAYS = new Set(['date', 'dateTime', 'instant']);

/** "Dates SHALL be valid dates" (datatypes.html): 30 February is none. A time has its offset. */
function isDay(text: string): boolean {
  const [day = '', time] = text.split('T');
  if (time !== undefined && !/(Z|[+-]\d\d:\d\d)$/.test(time)) return false;
  if (day.length < 10) return true;
  const moment = new Date(`${day}T00:00:00Z`);
  return !Number.isNaN(moment.getTime()) && moment.toISOString().startsWith(day);
}

/** A required value set: the code itself, or one of the codings of a concept. */
function boundFault(element: Element, value: unknown, at: string): Fault[] {
  const codes = element.required === undefined ? null : codesOf(element.required);
  if (!codes) return [];
  const codings: unknown[] = isObject(value)
    ? Array.isArray(value.coding)
      ? value.coding
      : [value]
    : [{ code: value }];
  const isIn = codings.some((coding) => {
    if (!isObject(coding)) return false;
    if (coding.system !== undefined) return codes.has(`${coding.system}|${coding.code}`);
    return typeof value === 'string' && [...codes].some((code) => code.split('|')[1] === value);
  });
  return isIn ? [] : [{ at, rule: `not in ${element.required}` }];
}

/** A reference leads only to what it may: by its address or by the type it states. */
function targetFault(element: Element, as: string, value: Json, at: string): Fault[] {
  const targets = element.types?.find(({ code }) => code === as)?.targets;
  const reference = as === 'CodeableReference' ? value.reference : as === 'Reference' ? value : undefined;
  if (!targets || targets.includes('Resource') || !isObject(reference)) return [];
  const address = typeof reference.reference === 'string' ? reference.reference : '';
  const led = /(?:^|\/)([A-Z][A-Za-z]+)\/[A-Za-z0-9.-]{1,64}(?:\/_history\/.+)?$/.exec(address)?.[1];
  return [led, reference.type]
    .filter((type) => typeof type === 'string' && !targets.includes(type))
    .map((type) => ({ at, rule: `may not lead to ${type}` }));
}

const nameOf = (element: Element) => element.path.slice(element.path.lastIndexOf('.') + 1);

/** The names an element may have in JSON, each with its type: a choice has one for each. */
function namesOf(element: Element): { name: string; as: string }[] {
  const name = nameOf(element);
  const types = (element.types ?? []).map(({ code }) => code);
  if (!name.endsWith('[x]')) return [{ name, as: types[0] ?? 'BackboneElement' }];
  const stem = name.slice(0, -3);
  return types.map((as) => ({ name: stem + as.charAt(0).toUpperCase() + as.slice(1), as }));
}
