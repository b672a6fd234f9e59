import { z } from 'zod';
import { itemId } from '../identity/ids';

/** A screw length as the surgeon states it. */
export const plannedLength = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('exact'), mm: z.number().positive('more than 0').max(200, 'at most 200 mm') }),
  z.object({
    kind: z.literal('spread'),
    meanMm: z.number().positive('more than 0').max(200, 'at most 200 mm'),
    sdMm: z.number().positive('more than 0').max(30, 'at most 30 mm'),
    /** A named default spread brings its source with it; `null` when the surgeon states the figures. */
    sourceNote: z.string().max(200).nullable(),
  }),
  /** Not said yet: allowed in a draft, shown as not established, never guessed. */
  z.object({ kind: z.literal('notStated') }),
]);
export type PlannedLength = z.infer<typeof plannedLength>;

const screwFill = {
  /** The screw family; the length is apart. */
  screwFamily: z.string().min(1).max(40),
  cortices: z.union([z.literal(1), z.literal(2)]),
  length: plannedLength,
  /** How many millimetres longer than needed the surgeon accepts for this hole. */
  acceptLongerMm: z.number().int().min(0).max(10),
};

/** What goes in one hole of a planned plate. */
export const holeFill = z.discriminatedUnion('purpose', [
  z.object({ purpose: z.literal('empty') }),
  z.object({ purpose: z.literal('neutral'), ...screwFill }),
  z.object({ purpose: z.literal('offset'), ...screwFill }),
  z.object({ purpose: z.literal('lag'), ...screwFill }),
  z.object({ purpose: z.literal('locked'), ...screwFill }),
  /** A wire that holds the plate for a while; the wire is named by item. */
  z.object({ purpose: z.literal('temporaryWire'), wireItemId: itemId }),
]);
export type HoleFill = z.infer<typeof holeFill>;
export type ScrewFill = Exclude<HoleFill, { purpose: 'empty' | 'temporaryWire' }>;

export const plannedPlate = z.object({
  /** Unique in its plan: `P1`, `P2`… */
  key: z.string().regex(/^P[1-9]\d?$/),
  plateItemId: itemId,
  /** Extent of the fracture along the plate, micrometres from the shaft end; `null` until marked. */
  zone: z
    .object({ fromUm: z.number().int().min(0), toUm: z.number().int().min(0) })
    .refine((zone) => zone.fromUm <= zone.toUm, 'the zone ends before it begins')
    .nullable(),
  /** What the plate is to do, as the surgeon states it; used for remarks only. */
  principle: z.enum(['compression', 'bridging', 'combined', 'buttress', 'neutralisation']).nullable(),
  /** By hole id. A hole that is not named here is not decided yet. */
  fills: z.record(z.string(), holeFill),
});
export type PlannedPlate = z.infer<typeof plannedPlate>;

/** A lag screw outside any plate. */
export const freeScrew = z.object({
  /** `L1`, `L2`… */
  key: z.string().regex(/^L[1-9]\d?$/),
  ...screwFill,
  washerItemId: itemId.nullable(),
});
export type FreeScrew = z.infer<typeof freeScrew>;

/** A surgeon's stated construct for one limb, whether for a case, a saved start or a configuration's promise. */
export const construct = z.object({
  region: z.enum([
    'clavicle',
    'proximalHumerus',
    'humerusShaft',
    'distalHumerus',
    'olecranon',
    'forearmShaft',
    'distalRadius',
    'hand',
    'pelvis',
    'proximalFemur',
    'femurShaft',
    'distalFemur',
    'patella',
    'proximalTibia',
    'tibiaShaft',
    'distalTibia',
    'ankle',
    'foot',
  ]),
  /** `null` where a configuration's promise holds for both sides. */
  limb: z.enum(['left', 'right']).nullable(),
  bone: z.enum(['normal', 'poor', 'notStated']),
  plates: z.array(plannedPlate).max(6, 'at most six plates'),
  freeScrews: z.array(freeScrew).max(20, 'at most twenty free screws'),
  /** One bone, one error: the spread shared by all lengths of this construct; `null` for none. */
  sharedLengthSdMm: z.number().positive().max(10).nullable(),
  note: z.string().max(500).nullable(),
});
export type Construct = z.infer<typeof construct>;

export const planStatus = z.enum(['draft', 'confirmed', 'superseded']);
