import { caseReference, type Urgency } from '../../surgicalCase';
import type { ImportField } from '../fields';
import type { StatedCell, StatedRow } from '../table';
import { type Bundle, type Entry, kindOfReference } from './bundle';
import type { Appointment, Concept, Reference, ServiceRequest } from './resources';
import { bodySites } from './sites';

/** A booking of the other program that is not taken over, and why. */
export interface LeftOut {
  row: number;
  because: 'calledOff' | 'notSettled';
}

export interface FhirRows {
  rows: StatedRow<ImportField>[];
  leftOut: LeftOut[];
}

type Cells = Partial<Record<ImportField, StatedCell>>;

/** hl7.org/fhir/R5/codesystem-appointmentstatus.html */
const CALLED_OFF = ['cancelled', 'noshow', 'entered-in-error', 'revoked'];
/** A request that is no order yet, or one that waits: hl7.org/fhir/R5/codesystem-request-status.html and -intent.html */
const NOT_SETTLED = ['proposed', 'pending', 'waitlist', 'draft', 'on-hold', 'unknown'];
const NO_ORDER = ['proposal', 'plan'];

/**
 * How soon, from hl7.org/fhir/R5/codesystem-request-priority.html: normal; sooner than routine; as soon as possible;
 * immediately. The pairing with our words is ours.
 */
const URGENCY_OF: Record<string, Urgency> = { routine: 'booked', urgent: 'soon', asap: 'today', stat: 'now' };

/** hl7.org/fhir/R5/valueset-encounter-participant-type.html */
const PRIMARY_PERFORMER = 'PPRF';

/**
 * The rows of a bundle: each Appointment, with the ServiceRequests it is based on, and each ServiceRequest that none is
 * based on. A row's number is that of its entry.
 */
export function fhirRows(bundle: Bundle): FhirRows {
  const rows: StatedRow<ImportField>[] = [];
  const leftOut: LeftOut[] = [];
  const appointed = new Set<ServiceRequest>();
  const take = (row: number, because: LeftOut['because'] | null, cells: () => Cells) => {
    if (because === null) rows.push({ row, cells: cells() });
    else leftOut.push({ row, because });
  };
  for (const { number, resource } of bundle.entries) {
    if (resource.resourceType !== 'Appointment') continue;
    const requests = (resource.basedOn ?? []).flatMap((one) => bundle.find('ServiceRequest', one) ?? []);
    for (const request of requests) appointed.add(request);
    take(number, leftOutFor(resource.status), () => ofAppointment(bundle, resource, requests));
  }
  for (const { number, resource } of bundle.entries as readonly Entry[]) {
    if (resource.resourceType !== 'ServiceRequest' || appointed.has(resource)) continue;
    const because = leftOutFor(resource.status) ?? leftOutFor(resource.intent);
    take(number, because, () => ofRequest(bundle, resource));
  }
  return { rows: rows.sort((a, b) => a.row - b.row), leftOut: leftOut.sort((a, b) => a.row - b.row) };
}

function leftOutFor(word: string | undefined): LeftOut['because'] | null {
  if (word === undefined) return null;
  if (CALLED_OFF.includes(word)) return 'calledOff';
  return NOT_SETTLED.includes(word) || NO_ORDER.includes(word) ? 'notSettled' : null;
}

function ofAppointment(bundle: Bundle, one: Appointment, requests: readonly ServiceRequest[]): Cells {
  const participants = one.participant ?? [];
  const actors = participants.flatMap(({ actor }) => (actor ? [actor] : []));
  const primary = participants.flatMap(({ actor, type }) =>
    actor && (type ?? []).some(isPrimary) ? [actor] : [],
  );
  const asked = requests.flatMap(({ performer }) => performer ?? []);
  const places = actors.flatMap((actor) => placeName(bundle, actor));
  const surgeons = practitionerNames(bundle, primary);
  const everybody = practitionerNames(bundle, actors);
  return {
    ...cell(
      'theatre',
      'Appointment.participant (Location)',
      places.length > 0 ? places : requestPlaces(bundle, requests),
    ),
    ...cell(
      'surgeon',
      'Appointment.participant (Practitioner)',
      firstOf(surgeons, everybody, practitionerNames(bundle, asked)),
    ),
    ...cell('start', 'Appointment.start', [one.start]),
    ...cell('end', 'Appointment.end', [one.end]),
    ...(one.minutesDuration === undefined || one.end !== undefined
      ? {}
      : { minutes: { value: one.minutesDuration, column: 'Appointment.minutesDuration' } }),
    ...cell('rowId', 'Appointment.id', [one.id]),
    ...ownReference('Appointment.identifier', one.identifier),
    ...whatIsAsked(bundle, requests),
  };
}

function ofRequest(bundle: Bundle, one: ServiceRequest): Cells {
  const { occurrencePeriod: period } = one;
  return {
    ...cell('theatre', 'ServiceRequest.location', requestPlaces(bundle, [one])),
    ...cell('surgeon', 'ServiceRequest.performer', practitionerNames(bundle, one.performer ?? [])),
    ...cell('start', 'ServiceRequest.occurrence', [period?.start ?? one.occurrenceDateTime]),
    ...cell('end', 'ServiceRequest.occurrencePeriod.end', [period?.end]),
    ...cell('rowId', 'ServiceRequest.id', [one.id]),
    ...ownReference('ServiceRequest.identifier', one.identifier),
    ...whatIsAsked(bundle, [one]),
  };
}

function whatIsAsked(bundle: Bundle, requests: readonly ServiceRequest[]): Cells {
  const sites = requests.flatMap((one) => bodySites(bundle, one));
  const priorities = requests.flatMap(({ priority }) => priority ?? []);
  return {
    ...cell(
      'region',
      'ServiceRequest.bodySite',
      sites.map(({ region }) => region),
    ),
    ...cell(
      'side',
      'ServiceRequest.bodySite (laterality)',
      sites.map(({ side }) => side),
    ),
    ...cell(
      'urgency',
      'ServiceRequest.priority',
      priorities.map((word) => URGENCY_OF[word] ?? word),
    ),
  };
}

/** A reference of our own shape among the identifiers; no other identifier is kept or shown. */
function ownReference(column: string, identifiers: Appointment['identifier']): Cells {
  const own = (identifiers ?? [])
    .map(({ value }) => value)
    .filter((value) => caseReference.safeParse(value).success);
  return cell('caseReference', column, own);
}

/** One value that all agree upon; more than one is said to be so. */
function cell(field: ImportField, column: string, values: readonly (string | null | undefined)[]): Cells {
  const different = [...new Set(values.flatMap((value) => value?.trim() || []))];
  const [value] = different;
  if (value === undefined) return {};
  return { [field]: { value, column, ...(different.length > 1 ? { several: true as const } : {}) } };
}

const firstOf = (...lists: readonly (readonly string[])[]) => lists.find((one) => one.length > 0) ?? [];
const isPrimary = ({ coding }: Concept) => (coding ?? []).some(({ code }) => code === PRIMARY_PERFORMER);

const requestPlaces = (bundle: Bundle, requests: readonly ServiceRequest[]): string[] =>
  requests
    .flatMap(({ locationReference, location }) => [
      ...(locationReference ?? []),
      ...(location ?? []).flatMap(({ reference }) => reference ?? []),
    ])
    .flatMap((one) => placeName(bundle, one));

/** The name of a place: of the Location itself, or as the reference to it has it. */
function placeName(bundle: Bundle, one: Reference): string[] {
  const name = bundle.find('Location', one)?.name;
  if (name !== undefined) return [name];
  return kindOfReference(one) === 'Location' && one.display !== undefined ? [one.display] : [];
}

/** Names of practitioners. The display of a reference to anything else, such as a patient, is never looked at. */
function practitionerNames(bundle: Bundle, all: readonly Reference[]): string[] {
  return all.flatMap((one) => {
    const role = bundle.find('PractitionerRole', one)?.practitioner;
    const who = role ?? one;
    const found = bundle.find('Practitioner', who);
    const [name] = (found?.name ?? []).toSorted(
      (a, b) => Number(b.use === 'official') - Number(a.use === 'official'),
    );
    if (name) return [name.text ?? [...(name.given ?? []), name.family ?? ''].join(' ').trim()];
    const kind = kindOfReference(who);
    const person = kind === 'Practitioner' || kind === 'PractitionerRole';
    return person && who.display !== undefined ? [who.display] : [];
  });
}
