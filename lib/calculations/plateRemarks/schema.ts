import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { duplicateName } from '@/lib/wording/calculations';
import { plateRemarkWords } from '@/lib/wording/plate-remarks';

/** The remarks, by name: local policy can switch off each of them. */
export const REMARKS = [
  'span-ratio',
  'screw-density',
  'fragment-screws',
  'fragment-cortices',
  'free-holes-over-zone',
  'poor-bone-one-cortex',
  'near-fracture-line',
  'plain-before-locking',
] as const;
export type RemarkName = (typeof REMARKS)[number];

const mm = z.number().min(0).max(2000);

const plannedHole = z.strictObject({
  hole: z.string().min(1).max(20).meta({ title: 'Hole' }),
  alongMm: mm.meta({ title: 'Along the plate', description: 'From the shaft end to the hole’s centre' }),
  fill: z
    .enum(['notDecided', 'empty', 'plain', 'lag', 'locking', 'temporaryWire'])
    .meta({ title: 'What goes in' }),
  cortices: z.literal([1, 2]).nullable().default(null).meta({ title: 'Cortices' }),
  threadMm: z.number().positive().max(20).nullable().default(null).meta({ title: 'Thread of the screw' }),
  tip: z
    .enum(['blunt', 'selfTapping', 'selfDrillingSelfTapping'])
    .nullable()
    .default(null)
    .meta({ title: 'Tip of the screw' }),
});

const plannedPlate = z.strictObject({
  plate: z.string().min(1).max(40).meta({ title: 'Plate' }),
  plateLengthMm: mm.nullable().meta({ title: 'Plate length' }),
  zone: z
    .strictObject({ fromMm: mm.meta({ title: 'From' }), toMm: mm.meta({ title: 'To' }) })
    .nullable()
    .meta({ title: 'Fracture zone', description: 'Along the plate, from the shaft end; null until marked' }),
  principle: z
    .enum(['compression', 'bridging', 'combined', 'buttress', 'neutralisation'])
    .nullable()
    .meta({ title: 'Principle', description: 'As the surgeon states it' }),
  holes: z.array(plannedHole).max(60).meta({ title: 'Holes' }),
});

const remarkName = z.enum(REMARKS);

export const plateRemarksInput = z.strictObject({
  bone: z.enum(['normal', 'poor', 'notStated']).meta({ title: 'Bone' }),
  plates: z.array(plannedPlate).max(6).meta({ title: 'Plates' }),
  off: z
    .array(remarkName)
    .max(REMARKS.length)
    .default([])
    .meta({ title: 'Switched off', description: 'Remarks that local policy has switched off' }),
});

export const remarkOutput = z.strictObject({
  plate: z.string(),
  remark: remarkName,
  /** Which main fragment, where it is about one. */
  fragment: z.enum(['shaftEnd', 'farEnd']).nullable(),
  /** `figure`: no published range applies; `note`: worth a look, without a range. */
  outcome: z.enum(['within', 'outside', 'figure', 'note', 'notEstablished']),
  figure: z.number().nullable(),
  /** `atLeast`: below `from` is outside; `atMost`: above `to` is outside; `between`: both. */
  range: z
    .strictObject({ sense: z.enum(['atLeast', 'atMost', 'between']), from: z.number(), to: z.number() })
    .nullable(),
  holes: z.array(z.string()),
  missing: z.array(z.string()),
  sentence: z.string(),
  source: z.string(),
  sourceFromMemory: z.boolean(),
  advisory: z.literal(true),
});

export const plateRemarksOutput = z.strictObject({ remarks: z.array(remarkOutput) });

export type PlateRemarksInput = z.output<typeof plateRemarksInput>;
export type RemarkedPlate = PlateRemarksInput['plates'][number];
export type RemarkedHole = RemarkedPlate['holes'][number];
export type PlateRemark = z.output<typeof remarkOutput>;
export type PlateRemarksOutput = z.output<typeof plateRemarksOutput>;

export function checkPlateRemarks(input: PlateRemarksInput): Problem[] {
  return input.plates.flatMap((plate, at) => {
    const problems: Problem[] = [];
    const add = (path: (string | number)[], code: string, message: string) =>
      problems.push({ path: ['plates', at, ...path], code, message });
    if (input.plates.findIndex((other) => other.plate === plate.plate) !== at) {
      add(['plate'], 'duplicate', duplicateName(plate.plate));
    }
    if (plate.zone && plate.zone.fromMm > plate.zone.toMm) {
      add(['zone', 'toMm'], 'zone-backwards', plateRemarkWords.zoneBackwards);
    }
    for (const [holeAt, { hole, alongMm }] of plate.holes.entries()) {
      if (plate.holes.findIndex((other) => other.hole === hole) !== holeAt) {
        add(['holes', holeAt, 'hole'], 'duplicate', duplicateName(hole));
      }
      if (plate.plateLengthMm !== null && alongMm > plate.plateLengthMm) {
        add(
          ['holes', holeAt, 'alongMm'],
          'off-the-plate',
          plateRemarkWords.offThePlate(hole, plate.plateLengthMm),
        );
      }
    }
    return problems;
  });
}
