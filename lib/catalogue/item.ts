import { z } from 'zod';
import { itemId, makerId } from '../identity/ids';
import { coupling, declaredName, drive, sleeveEnd, threadForm } from './fittings';
import { hole } from './hole';
import { material, side, statedUm, um } from './measures';

export type { Coupling, DrillingPosition, Drive, SleeveEnd, SleeveSeat, ThreadForm } from './fittings';

/** What every catalogue entry carries, whatever its kind. `null` means not stated, never zero. */
const common = {
  id: itemId,
  code: z
    .string()
    .trim()
    .min(1, 'a code is needed')
    .max(40, 'at most 40 characters')
    .regex(/^[A-Za-z0-9][A-Za-z0-9./-]*$/, 'letters, digits, dot, slash and hyphen only'),
  name: z.string().trim().min(1, 'a name is needed').max(120, 'at most 120 characters'),
  nickname: z.string().trim().min(1).max(60, 'at most 60 characters').nullable(),
  makerId,
  side: side.nullable(),
  material: material.nullable(),
  suppliedSterile: z.boolean().nullable(),
  use: z.enum(['singleUse', 'reprocessable']),
  /** Reprocessing cycles the maker allows, where one is stated. */
  reprocessingLimit: z.number().int().positive().max(100_000).nullable(),
  massGrams: z
    .number()
    .int('whole grams')
    .positive('must be more than 0')
    .max(50_000, 'at most 50 kg')
    .nullable(),
  unitCostPence: z.number().int('whole pence').min(0).max(100_000_000).nullable(),
  packMultiple: z.number().int().positive().max(10_000),
  /** Fourteen digits with a valid check digit (checked by `checkItem`). */
  gtin: z
    .string()
    .regex(/^\d{14}$/, 'fourteen digits')
    .nullable(),
  /** Separate parts that make up one piece, each counted. */
  partsPerPiece: z.number().int().positive().max(50),
  status: z.enum(['current', 'withdrawn', 'recalled']),
};

export const plate = z.object({
  ...common,
  kind: z.literal('plate'),
  shape: z.enum([
    'straightNarrow',
    'straightBroad',
    'oneThirdTubular',
    'tRightAngled',
    'tOblique',
    'lShaped',
    'cloverleaf',
    'reconstruction',
    'buttress',
    'anatomic',
  ]),
  /** Thread diameters of the screws it is made for. */
  takesThreadsUm: z.array(um).max(6),
  lengthUm: statedUm,
  /** Width of the shaft. */
  widthUm: statedUm,
  /** Width across the head, where the plate has one. */
  headWidthUm: statedUm,
  thicknessUm: statedUm,
  /** Plates that differ only in side or length share a look; twins of opposite side are look-alikes. */
  lookAlikeOf: declaredName.nullable(),
  holes: z.array(hole).max(60),
});

export const screw = z.object({
  ...common,
  kind: z.literal('screw'),
  screwKind: z.enum(['cortical', 'cancellousFull', 'cancellousPartial', 'locking', 'cannulated']),
  /** Screws alike in everything but length share a screw family; a plan names the family, then a length. */
  screwFamily: declaredName,
  threadForm: threadForm.nullable(),
  threadUm: statedUm,
  coreUm: statedUm,
  /** Smooth shaft of a partially threaded screw. */
  shaftUm: statedUm,
  threadLengthUm: statedUm,
  pitchUm: statedUm,
  head: z.enum(['spherical', 'conicalPlain', 'threaded']).nullable(),
  headUm: statedUm,
  lockingFamily: declaredName.nullable(),
  drive: drive.nullable(),
  tip: z.enum(['blunt', 'selfTapping', 'selfDrillingSelfTapping']).nullable(),
  cannulationUm: statedUm,
  /** Torque class a locking screw is tightened to, in newton millimetres. */
  torqueNmm: z.number().int().positive().max(50_000).nullable(),
  /** Whether the maker asks for a countersink under the head when it is used outside a plate. */
  countersinkStated: z.boolean().nullable(),
  /** Overall length, head included. */
  lengthUm: statedUm,
});

export const washer = z.object({
  ...common,
  kind: z.literal('washer'),
  innerUm: statedUm,
  outerUm: statedUm,
});

export const drillBit = z.object({
  ...common,
  kind: z.literal('drillBit'),
  diameterUm: statedUm,
  lengthUm: statedUm,
  coupling: coupling.nullable(),
  cannulationUm: statedUm,
});

export const drillSleeve = z.object({
  ...common,
  kind: z.literal('drillSleeve'),
  form: z.enum(['threaded', 'dualPosition', 'doubleEnded', 'insert', 'tissueProtection']),
  ends: z.array(sleeveEnd).min(1, 'a sleeve has at least one end').max(2, 'a sleeve has at most two ends'),
  /** Codes of the only plates it is made for; `null` when it is not restricted. */
  onlyForPlates: z.array(z.string()).nullable(),
  lengthUm: statedUm,
});

export const tap = z.object({
  ...common,
  kind: z.literal('tap'),
  threadForm: threadForm.nullable(),
  threadUm: statedUm,
  lengthUm: statedUm,
  coupling: coupling.nullable(),
});

export const countersink = z.object({
  ...common,
  kind: z.literal('countersink'),
  /** Head diameter it makes room for. */
  headUm: statedUm,
  /** Diameter of the pin that follows the drilled hole. */
  pinUm: statedUm,
  coupling: coupling.nullable(),
});

export const depthGauge = z.object({
  ...common,
  kind: z.literal('depthGauge'),
  fromUm: statedUm,
  toUm: statedUm,
  /** Width of the hook, which must pass the drilled hole. */
  hookUm: statedUm,
  /** Screw threads its scale is made for. */
  forThreadsUm: z.array(um).nullable(),
});

export const driver = z.object({
  ...common,
  kind: z.literal('driver'),
  drive: drive.nullable(),
  holdsScrew: z.boolean().nullable(),
  lengthUm: statedUm,
  /** `null` when not stated; a driver with a fixed handle has `fixedHandle` true and no coupling. */
  coupling: coupling.nullable(),
  fixedHandle: z.boolean(),
  cannulationUm: statedUm,
});

export const handle = z.object({
  ...common,
  kind: z.literal('handle'),
  form: z.enum(['straight', 'tShaped', 'ratchet', 'power']),
  /** Shanks it takes. */
  takes: z.array(coupling).nullable(),
});

export const torqueLimiter = z.object({
  ...common,
  kind: z.literal('torqueLimiter'),
  torqueNmm: z.number().int().positive().max(50_000).nullable(),
  takes: z.array(coupling).nullable(),
  /** Its own shank, where it goes into a handle; `null` with `fixedHandle`. */
  coupling: coupling.nullable(),
  fixedHandle: z.boolean(),
});

export const guideWire = z.object({
  ...common,
  kind: z.literal('guideWire'),
  diameterUm: statedUm,
  lengthUm: statedUm,
  threadedTip: z.boolean().nullable(),
});

export const reductionForceps = z.object({
  ...common,
  kind: z.literal('reductionForceps'),
  jaw: z.enum(['pointed', 'serrated', 'toothed', 'ballTipped']).nullable(),
  lengthUm: statedUm,
});

export const plateBender = z.object({
  ...common,
  kind: z.literal('plateBender'),
  form: z.enum(['bendingPress', 'bendingIron', 'bendingPliers']).nullable(),
  takesThicknessUm: statedUm,
  takesWidthUm: statedUm,
});

export const holder = z.object({
  ...common,
  kind: z.literal('holder'),
  holds: z.enum(['plate', 'screw', 'wire', 'bone']).nullable(),
  lengthUm: statedUm,
});

const box = { lengthUm: statedUm, widthUm: statedUm, heightUm: statedUm };

export const rack = z.object({
  ...common,
  kind: z.literal('rack'),
  rows: z.number().int().positive().max(40),
  columns: z.number().int().positive().max(40),
  forThreadUm: statedUm,
  ...box,
});

export const basket = z.object({ ...common, kind: z.literal('basket'), ...box });
export const container = z.object({ ...common, kind: z.literal('container'), ...box });

export const generalInstrument = z.object({
  ...common,
  kind: z.literal('generalInstrument'),
  purpose: z.string().trim().min(1).max(120).nullable(),
  lengthUm: statedUm,
});

export const consumable = z.object({
  ...common,
  kind: z.literal('consumable'),
  purpose: z.string().trim().min(1).max(120).nullable(),
});

/** A catalogue entry: a design, not a piece. */
export const item = z.discriminatedUnion('kind', [
  plate,
  screw,
  washer,
  drillBit,
  drillSleeve,
  tap,
  countersink,
  depthGauge,
  driver,
  handle,
  torqueLimiter,
  guideWire,
  reductionForceps,
  plateBender,
  holder,
  rack,
  basket,
  container,
  generalInstrument,
  consumable,
]);

export type Item = z.infer<typeof item>;
export type ItemKind = Item['kind'];
export type ItemOf<K extends ItemKind> = Extract<Item, { kind: K }>;
export type Plate = ItemOf<'plate'>;
export type Screw = ItemOf<'screw'>;
export type Washer = ItemOf<'washer'>;
export type DrillBit = ItemOf<'drillBit'>;
export type DrillSleeve = ItemOf<'drillSleeve'>;
export type Tap = ItemOf<'tap'>;
export type Countersink = ItemOf<'countersink'>;
export type DepthGauge = ItemOf<'depthGauge'>;
export type Driver = ItemOf<'driver'>;
export type Handle = ItemOf<'handle'>;
export type TorqueLimiter = ItemOf<'torqueLimiter'>;
export type GuideWire = ItemOf<'guideWire'>;

export const ITEM_KINDS = item.options.map((option) => option.shape.kind.value) as ItemKind[];
