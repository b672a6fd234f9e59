import { fhirWords } from '../wording/fhir';
import { absent } from './absent';
import type { CodeableReference, Identifier, Reference, Resource } from './datatypes';
import type { Frame } from './frame';
import { GS1_ISSUER, itemConcept, type NamedItem, ownIdentifier } from './identifiers';
import { fhirId } from './ids';
import { procedureReference } from './procedureReference';

/** One piece that was implanted or wasted in a case: one of the pieces of a move in the journal. */
export interface UsedPieceFacts {
  /** The move, and which of its pieces, from 1. */
  seq: number;
  nth: number;
  act: 'implanted' | 'wasted';
  /** Why it was wasted, as the journal has it. */
  reason: string | null;
  /** A later entry says that it was not so. */
  takenBack: boolean;
  item: NamedItem & { id: string };
  lot: string | null;
  useBy: string | null;
  caseReference: string;
  doneAt: string;
  /** The latest of: entered, the record closed, taken back. */
  changedAt: string;
}

export interface DeviceUsage extends Resource {
  resourceType: 'DeviceUsage';
  contained: [ContainedPiece];
  identifier: Identifier[];
  status: DeviceUsageStatus;
  patient: Reference;
  derivedFrom: Reference[];
  timingDateTime: string;
  device: CodeableReference;
  reason?: CodeableReference[];
}

/** The piece by its lot: it has no number of its own and no life but in this record. */
interface ContainedPiece {
  resourceType: 'Device';
  id: 'piece';
  definition: CodeableReference;
  udiCarrier?: { deviceIdentifier: string; issuer: string }[];
  lotNumber?: string;
  expirationDate?: string;
}

type DeviceUsageStatus = 'active' | 'not-done' | 'entered-in-error';

/**
 * | here | R5 | because |
 * |---|---|---|
 * | implanted | `active` | "still being used", as of the moment it was said; whether it was taken out later is not known here |
 * | wasted: opened and not implanted, dropped, damaged | `not-done` | "the device was not used"; `reason` says why |
 * | taken back by a correction | `entered-in-error` | it stays on record and counts for nothing |
 *
 * Meanings: hl7.org/fhir/R5/valueset-deviceusage-status.html
 */
export function deviceUsageStatus({
  act,
  takenBack,
}: Pick<UsedPieceFacts, 'act' | 'takenBack'>): DeviceUsageStatus {
  if (takenBack) return 'entered-in-error';
  return act === 'implanted' ? 'active' : 'not-done';
}

/** `move.<number>.<nth>`: R5 records the use of one device, so a move of three pieces is three of them. */
export const usageId = ({ seq, nth }: Pick<UsedPieceFacts, 'seq' | 'nth'>): string => `move.${seq}.${nth}`;

/**
 * One piece used. R5 demands a patient, and this program keeps none: the reference carries `unsupported`, "the source system
 * wasn't capable of supporting this element", which R5 allows in place of a reference, an identifier or a display
 * (hl7.org/fhir/R5/references.html, ref-2). The case's reference is no identifier of a patient, so it does not stand there; it
 * identifies the procedure that this is derived from. The piece itself is contained, for its lot: nothing else refers to it.
 */
export function deviceUsage(frame: Frame, piece: UsedPieceFacts): DeviceUsage {
  const { item, lot, useBy } = piece;
  const id = usageId(piece);
  return {
    resourceType: 'DeviceUsage',
    id,
    meta: { lastUpdated: piece.changedAt },
    contained: [
      {
        resourceType: 'Device',
        id: 'piece',
        definition: { reference: { reference: `DeviceDefinition/${fhirId(item.id)}` } },
        // the fixed part of its UDI; what else its carrier says was not kept
        ...(item.gtin !== null && { udiCarrier: [{ deviceIdentifier: item.gtin, issuer: GS1_ISSUER }] }),
        ...(lot !== null && { lotNumber: lot }),
        ...(useBy !== null && { expirationDate: useBy }),
      },
    ],
    identifier: [ownIdentifier(frame, 'move-of-a-piece', `${piece.seq}.${piece.nth}`)],
    status: deviceUsageStatus(piece),
    patient: { ...absent('unsupported'), type: 'Patient' },
    derivedFrom: [procedureReference(frame, piece.caseReference)],
    timingDateTime: piece.doneAt,
    device: { concept: itemConcept(frame, item), reference: { reference: '#piece' } },
    ...(piece.act === 'wasted' && { reason: [{ concept: { text: wasteWords(piece.reason) } }] }),
  };
}

function wasteWords(reason: string | null): string {
  if (reason === 'openedNotImplanted') return fhirWords.openedNotImplanted;
  return reason === 'damaged' ? fhirWords.damaged : fhirWords.discarded;
}
