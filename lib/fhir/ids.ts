/**
 * Ids as FHIR takes them: letters, digits, hyphen and dot, at most 64 (hl7.org/fhir/R5/datatypes.html#id). Ours have one
 * underscore, after their prefix, and never a dot, so the two can be told from each other and back.
 */

/** `item_abc` → `item.abc`. */
export const fhirId = (id: string): string => id.replace('_', '.');

/** `item.abc` → `item_abc`, or `null` for what is no id of ours. */
export function ownId(id: string): string | null {
  const match = /^([a-zA-Z]+)\.([0-9a-z-]+)$/.exec(id);
  return match ? `${match[1]}_${match[2]}` : null;
}
