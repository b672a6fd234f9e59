import { fhirWords } from '../wording/fhir';
import type { Reference } from './datatypes';
import type { Frame } from './frame';
import { ownIdentifier } from './identifiers';

/**
 * The operation, by the case's opaque reference. A Procedure is not offered: R5 demands its subject, a patient, and none is kept
 * here. Whoever knows both sides finds it by this identifier.
 */
export const procedureReference = (frame: Frame, reference: string): Reference => ({
  type: 'Procedure',
  identifier: ownIdentifier(frame, 'case-reference', reference),
  display: fhirWords.case(reference),
});
