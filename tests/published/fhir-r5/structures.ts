import { groupBy } from '@/lib/lists/groupBy';
import { official } from './official';

/** One element of a type as HL7 publishes it (`StructureDefinition.snapshot.element`, FHIR R5). */
export interface Element {
  path: string;
  min: number;
  max: string;
  types?: { code: string; targets?: string[]; regex?: string }[];
  /** The path of the element whose content this one has too. */
  like?: string;
  /** The value set its codes must be from. */
  required?: string;
  rules?: { key: string; expression: string }[];
}

const STRUCTURES = official<Record<string, { kind: string; elements: Element[] }>>('structures');
const VALUE_SETS = official<Record<string, string[] | null>>('value-sets');

const once = <T>(make: (name: string) => T): ((name: string) => T) => {
  const kept = new Map<string, T>();
  return (name) => {
    if (!kept.has(name)) kept.set(name, make(name));
    return kept.get(name) as T;
  };
};

export interface Structure {
  kind: string;
  root: Element;
  elements: Element[];
  /** Elements by the path they stand under. */
  under: ReadonlyMap<string, Element[]>;
}

/** What a type is made of; `null` for one the extract does not have. */
export const structureOf = once((type): Structure | null => {
  const found = STRUCTURES[type];
  const [root, ...elements] = found?.elements ?? [];
  if (!found || !root) return null;
  const under = groupBy(elements, ({ path }) => path.slice(0, path.lastIndexOf('.')));
  return { kind: found.kind, root, elements, under };
});

/** `system|code` of a required value set; `null` where it has no end, as media types have none. */
export const codesOf = once((valueSet): ReadonlySet<string> | null => {
  const known = VALUE_SETS[valueSet];
  return known ? new Set(known) : null;
});

/** The regular expression a primitive is written by; `null` where none is published. */
export const regexOf = once((primitive): RegExp | null => {
  const value = structureOf(primitive)?.elements.find(({ path }) => path === `${primitive}.value`);
  const regex = value?.types?.[0]?.regex;
  return regex === undefined ? null : new RegExp(`^(?:${regex})$`);
});
