import fhirpath from 'fhirpath';
import r5 from 'fhirpath/fhir-context/r5';
import type { Element } from './structures';

/** What a rule may look at beside the element it is of: the resource it is in, and the one that one is contained in. */
export interface Around {
  resource: unknown;
  rootResource: unknown;
}

type Compiled = (element: unknown, around: Record<string, unknown>) => unknown[];
const compiled = new Map<string, Compiled>();

/**
 * Keys of the published rules that an element breaks. The rules are FHIRPath; HL7's own fhirpath.js reads them.
 *
 * @param base the type or path the rules are written for, as `Reference` or `Device.udiCarrier`
 */
export function brokenRules(
  rules: Element['rules'],
  base: string,
  element: unknown,
  around: Around,
): string[] {
  return (rules ?? []).flatMap(({ key, expression }) => {
    if (expression.startsWith('contained') && !hasContained(around.resource)) return [];
    const name = `${base} ${expression}`;
    const known =
      compiled.get(name) ?? (fhirpath.compile({ base, expression }, r5, { traceFn: () => {} }) as Compiled);
    compiled.set(name, known);
    try {
      const answer = known(structuredClone(element), { ...copyOf(around) });
      return answer.length === 0 || answer[0] === true ? [] : [key];
    } catch {
      // what is of another type than the rule is written for does not keep it
      return [key];
    }
  });
}

/** Rules that begin with what is contained say of it that nothing else is there: without any they hold. */
const hasContained = (resource: unknown): boolean =>
  typeof resource === 'object' && resource !== null && 'contained' in resource;

/** It writes what it learns of types into what it is given: it gets copies, one of each resource. */
function copyOf(around: Around): Around {
  const known = copies.get(around) ?? structuredClone(around);
  copies.set(around, known);
  return known;
}
const copies = new WeakMap<Around, Around>();
