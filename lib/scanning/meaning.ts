import { z } from 'zod';
import {
  caseId,
  checkId,
  countId,
  itemId,
  loadId,
  packId,
  placeId,
  scanId,
  setId,
  stockId,
} from '../identity/ids';

/** Packs as `packs.state` has them. */
const packState = z.enum(['closed', 'inLoad', 'awaitingAcceptance', 'sterile', 'opened', 'undone']);
const loadState = z.enum(['makingUp', 'running', 'awaitingAcceptance', 'accepted', 'rejected', 'undone']);

/** Why a code that is known is not taken. */
export const refusalOfScan = z.enum([
  'oldLabel',
  'noSuchCopy',
  'packOpened',
  'packUndone',
  'oldSheet',
  'faulty',
  'ambiguous',
  'severalThings',
  'patient',
]);
export type RefusalOfScan = z.infer<typeof refusalOfScan>;

/** What a code names. `item` is a design as its maker's code names it, with what that code says of the one piece or box. */
export const scanMeaning = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('set'), setId, code: z.string() }),
  z.object({
    kind: z.literal('pack'),
    packId,
    number: z.string(),
    /** Of its label; `null` where only the number was typed. */
    copy: z.number().int().positive().nullable(),
    setId: setId.nullable(),
    /** Of the set, or of the item in a pouch. */
    code: z.string(),
    itemId: itemId.nullable(),
    lot: z.string().nullable(),
    useBy: z.string().nullable(),
    loadId: loadId.nullable(),
    state: packState,
    short: z.boolean(),
  }),
  z.object({
    kind: z.literal('item'),
    itemId,
    code: z.string(),
    name: z.string(),
    gtin: z.string().nullable(),
    lot: z.string().nullable(),
    serial: z.string().nullable(),
    /** `YYYY-MM-DD`; `null` is not stated. */
    useBy: z.string().nullable(),
    /** How many the code says are in the box. */
    quantity: z.number().int().positive().nullable(),
    status: z.enum(['current', 'withdrawn', 'recalled']),
  }),
  z.object({ kind: z.literal('load'), loadId, number: z.string(), state: loadState }),
  z.object({ kind: z.literal('place'), placeId, name: z.string() }),
  z.object({
    kind: z.literal('stock'),
    stockId,
    itemId,
    code: z.string(),
    lot: z.string().nullable(),
    useBy: z.string().nullable(),
    placeId,
  }),
  z.object({
    kind: z.literal('sheet'),
    number: z.string(),
    setId,
    code: z.string(),
    versionId: z.string(),
    setRevision: z.number().int(),
  }),
  z.object({ kind: z.literal('case'), caseId, reference: z.string() }),
  z.object({
    kind: z.literal('refused'),
    because: refusalOfScan,
    /** The set or pack it would have been, where that is known: the way out leads there. */
    setId: setId.nullable(),
    packId: packId.nullable(),
    /** What it could be, where it could be several things. */
    candidates: z.array(z.string()),
    /** What is wrong, one sentence each. */
    faults: z.array(z.string()),
  }),
  /** Kept as text. `gtin` where it is a sound code of something that is not in the catalogue. */
  z.object({ kind: z.literal('unknown'), text: z.string(), gtin: z.string().nullable() }),
]);
export type ScanMeaning = z.infer<typeof scanMeaning>;

/** What a scan is answered with: it sounds, looks and reads differently for each. */
export const scanVerdict = z.enum(['understood', 'ask', 'already', 'refused', 'unknown']);
export type ScanVerdict = z.infer<typeof scanVerdict>;

/**
 * In what a scan was made: the screen's own work. The same thing twice in one context is noticed; in `none` a scan only
 * leads somewhere.
 */
export const scanContext = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('none') }),
  z.object({ kind: z.literal('bench'), countId }),
  z.object({ kind: z.literal('load'), loadId }),
  z.object({ kind: z.literal('set'), setId }),
  /** The kit of a case is picked. */
  z.object({ kind: z.literal('kit'), caseId }),
  /** What came back of it is entered. */
  z.object({ kind: z.literal('kitBack'), caseId }),
  z.object({ kind: z.literal('kitCheck'), checkId }),
  /** What was used is entered. */
  z.object({ kind: z.literal('use'), caseId }),
]);
export type ScanContext = z.infer<typeof scanContext>;

/** How the text came: typed by a scanner, read by a camera, or typed by a person. */
export const scanHow = z.enum(['scanner', 'camera', 'typed']);
export type ScanHow = z.infer<typeof scanHow>;

/** The earlier scan of the same thing in the same context. */
export const scannedBefore = z.object({ scanId, at: z.string(), by: z.string() });

/** One scan as the service answers it, the same however often it is sent. */
export const scanAnswer = z.object({
  id: scanId,
  verdict: scanVerdict,
  meaning: scanMeaning,
  /** What was read, in one sentence; `null` for codes of our own. */
  says: z.string().nullable(),
  /** What it means and the way out, for people. */
  sentence: z.string(),
  before: scannedBefore.nullable(),
  doneAt: z.string(),
  enteredAt: z.string(),
  late: z.boolean(),
});
export type ScanAnswer = z.infer<typeof scanAnswer>;
