import { z } from 'zod';

/**
 * Of each resource the elements that say where, when, what and who operates, and no others: what stands here is all that is
 * ever looked at. Nothing about a patient is among them: no subject, no name, no identifier of theirs, no note.
 *
 * Source: HL7 FHIR R4 (4.0.1) and R5 (5.0.0), hl7.org/fhir/R4 and hl7.org/fhir/R5: appointment.html, servicerequest.html,
 * location.html, practitioner.html, practitionerrole.html, bodystructure.html, bundle.html, datatypes.html.
 */
const text = z.string().max(2_000).optional().catch(undefined);
const many = <S extends z.ZodType>(of: S) => z.array(of).max(1_000).optional().catch(undefined);

export const coding = z.object({ system: text, code: text, display: text });
export const concept = z.object({ text, coding: many(coding) });
export type Concept = z.infer<typeof concept>;

/** Where a reference leads. Its display is looked at later, and only where it leads to a place or a practitioner. */
export const reference = z.object({ reference: text, type: text, display: text });
export type Reference = z.infer<typeof reference>;

/** R5 writes a place as a concept or a reference; only the reference is looked at. */
const placed = z.object({ reference: reference.optional().catch(undefined) });
const some = <S extends z.ZodType>(of: S) => of.optional().catch(undefined);
const period = z.object({ start: text, end: text });

export const appointment = z.object({
  resourceType: z.literal('Appointment'),
  id: text,
  status: text,
  start: text,
  end: text,
  minutesDuration: z.number().optional().catch(undefined),
  identifier: many(z.object({ value: text })),
  basedOn: many(reference),
  participant: many(z.object({ type: many(concept), actor: some(reference) })),
});
export type Appointment = z.infer<typeof appointment>;

export const serviceRequest = z.object({
  resourceType: z.literal('ServiceRequest'),
  id: text,
  status: text,
  intent: text,
  priority: text,
  identifier: many(z.object({ value: text })),
  occurrenceDateTime: text,
  occurrencePeriod: some(period),
  performer: many(reference),
  /** R4. */
  locationReference: many(reference),
  /** R5. */
  location: many(placed),
  bodySite: many(concept),
  /** R5. */
  bodyStructure: some(reference),
});
export type ServiceRequest = z.infer<typeof serviceRequest>;

export const location = z.object({ resourceType: z.literal('Location'), id: text, name: text });
export const practitioner = z.object({
  resourceType: z.literal('Practitioner'),
  id: text,
  name: many(z.object({ use: text, text, family: text, given: many(z.string().max(200)) })),
});
export const practitionerRole = z.object({
  resourceType: z.literal('PractitionerRole'),
  id: text,
  practitioner: some(reference),
});
export const bodyStructure = z.object({
  resourceType: z.literal('BodyStructure'),
  id: text,
  /** R5. */
  includedStructure: many(z.object({ structure: some(concept), laterality: some(concept) })),
});

const READ = {
  Appointment: appointment,
  ServiceRequest: serviceRequest,
  Location: location,
  Practitioner: practitioner,
  PractitionerRole: practitionerRole,
  BodyStructure: bodyStructure,
} as const;
type ReadKind = keyof typeof READ;
export type ReadResource = { [K in ReadKind]: z.infer<(typeof READ)[K]> }[ReadKind];

/** A resource by its elements above; `null` for one of a kind that is not read. */
export function readResource(raw: unknown): ReadResource | null {
  const kind = kindOf(raw);
  if (kind === null || !Object.hasOwn(READ, kind)) return null;
  const parsed = READ[kind as ReadKind].safeParse(raw);
  return parsed.success ? (parsed.data as ReadResource) : null;
}

/** The kind a resource says it is of. */
export function kindOf(raw: unknown): string | null {
  const said = z.object({ resourceType: z.string().max(64) }).safeParse(raw);
  return said.success ? said.data.resourceType : null;
}
