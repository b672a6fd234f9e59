import type { Extension } from './datatypes';

/**
 * Why something is not said, in the words of HL7 (hl7.org/fhir/R5/valueset-data-absent-reason.html): nobody knows; this program
 * has no place for it; it is there and must not be told to whoever asks.
 */
type Why = 'unknown' | 'unsupported' | 'masked';

/** In place of what R5 demands and we cannot say (hl7.org/fhir/extensions/StructureDefinition-data-absent-reason.html). */
export const absent = (why: Why): { extension: Extension[] } => ({
  extension: [{ url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason', valueCode: why }],
});
