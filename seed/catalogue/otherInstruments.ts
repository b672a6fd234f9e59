import { type EntryOf, type ItemEntry, implant, instrument, um } from './entry';

const wire = (
  code: string,
  diameterMm: number,
  lengthMm: number,
  threadedTip: boolean | null,
): EntryOf<'guideWire'> => ({
  ...instrument(
    'pelham',
    code,
    `Wire ${Number.isInteger(diameterMm) ? diameterMm.toFixed(1) : diameterMm} × ${lengthMm} mm${threadedTip ? ', threaded tip' : ''}`,
    {
      material: 'iso5832-1',
      use: 'singleUse',
      massGrams: Math.max(1, Math.round((Math.PI / 4) * diameterMm ** 2 * lengthMm * 0.008)),
      unitCostPence: 420,
      packMultiple: 10,
    },
  ),
  kind: 'guideWire',
  diameterUm: um(diameterMm),
  lengthUm: um(lengthMm),
  threadedTip,
});

const washer = (
  maker: 'carrowby' | 'sallowfen',
  code: string,
  innerMm: number,
  outerMm: number,
  forThreads: string,
): EntryOf<'washer'> => ({
  ...implant(maker, code, `Washer for ${forThreads} screws`, {
    massGrams: 1,
    unitCostPence: 980,
    packMultiple: 5,
  }),
  kind: 'washer',
  innerUm: um(innerMm),
  outerUm: um(outerMm),
});

const forceps = (
  code: string,
  name: string,
  jaw: EntryOf<'reductionForceps'>['jaw'],
  lengthMm: number,
  massGrams: number | null,
): EntryOf<'reductionForceps'> => ({
  ...instrument('pelham', code, name, { massGrams, unitCostPence: 16_800, partsPerPiece: 1 }),
  kind: 'reductionForceps',
  jaw,
  lengthUm: um(lengthMm),
});

const bender = (
  code: string,
  name: string,
  form: EntryOf<'plateBender'>['form'],
  thicknessMm: number | null,
  widthMm: number | null,
  massGrams: number,
  partsPerPiece = 1,
): EntryOf<'plateBender'> => ({
  ...instrument('pelham', code, name, { massGrams, unitCostPence: 19_900, partsPerPiece }),
  kind: 'plateBender',
  form,
  takesThicknessUm: um(thicknessMm),
  takesWidthUm: um(widthMm),
});

const holder = (
  code: string,
  name: string,
  holds: EntryOf<'holder'>['holds'],
  lengthMm: number,
  massGrams: number,
): EntryOf<'holder'> => ({
  ...instrument('pelham', code, name, { massGrams, unitCostPence: 13_300 }),
  kind: 'holder',
  holds,
  lengthUm: um(lengthMm),
});

const general = (
  code: string,
  name: string,
  purpose: string | null,
  lengthMm: number,
  massGrams: number,
): EntryOf<'generalInstrument'> => ({
  ...instrument('pelham', code, name, { massGrams, unitCostPence: 5_200 }),
  kind: 'generalInstrument',
  purpose,
  lengthUm: um(lengthMm),
});

const consumable = (
  code: string,
  name: string,
  purpose: string,
  unitCostPence: number,
  packMultiple: number,
): EntryOf<'consumable'> => ({
  ...instrument('pelham', code, name, {
    material: 'other',
    use: 'singleUse',
    suppliedSterile: true,
    massGrams: 12,
    unitCostPence,
    packMultiple,
  }),
  kind: 'consumable',
  purpose,
});

/** Wires, washers, forceps, benders, holders, general instruments and consumables. */
export function otherInstruments(): ItemEntry[] {
  return [
    wire('PT-W-08-70', 0.8, 70, false),
    wire('PT-W-10-150', 1, 150, false),
    wire('PT-W-12-150', 1.25, 150, false),
    wire('PT-W-12-150T', 1.25, 150, true),
    wire('PT-W-16-150', 1.6, 150, false),
    wire('PT-W-20-150', 2, 150, false),
    wire('PT-W-20-280', 2, 280, false),
    wire('PT-W-25-280T', 2.5, 280, true),
    washer('carrowby', 'CR-W-35', 3.7, 7, '3.5'),
    washer('carrowby', 'CR-W-40', 4.2, 7, '4.0'),
    washer('carrowby', 'CR-W-65', 6.7, 13, '4.5 and 6.5'),
    washer('sallowfen', 'SF-W-40', 4.2, 7, '4.0'),
    forceps('PT-F-P130', 'Reduction forceps, pointed, 130 mm', 'pointed', 130, 75),
    forceps('PT-F-P180', 'Reduction forceps, pointed, 180 mm', 'pointed', 180, 150),
    forceps('PT-F-P205', 'Reduction forceps, pointed, broad, 205 mm', 'pointed', 205, 210),
    forceps('PT-F-S140', 'Reduction forceps, serrated, 140 mm', 'serrated', 140, 95),
    forceps('PT-F-S240', 'Reduction forceps, serrated, 240 mm', 'serrated', 240, 320),
    forceps('PT-F-T170', 'Reduction forceps, toothed, 170 mm', 'toothed', 170, 130),
    forceps('PT-F-B200', 'Reduction forceps, ball-tipped, 200 mm', 'ballTipped', 200, null),
    bender('PT-N-PRESS', 'Bending press', 'bendingPress', 6, 18, 1_450, 3),
    bender('PT-N-PLIERS', 'Bending pliers for small plates', 'bendingPliers', 3.6, 11, 420),
    bender('PT-N-IRON-S', 'Bending iron, small plates', 'bendingIron', 3.6, 11, 180),
    bender('PT-N-IRON-L', 'Bending iron, large plates', 'bendingIron', 5.5, 18, 340),
    bender('PT-N-MINI', 'Bending pliers for mini plates', 'bendingPliers', 1.4, 6, 160),
    holder('PT-O-PLATE', 'Plate holding forceps, small', 'plate', 145, 110),
    holder('PT-O-PLATE-L', 'Plate holding forceps, large', 'plate', 210, 260),
    holder('PT-O-SCREW', 'Screw holding forceps', 'screw', 85, 30),
    holder('PT-O-BONE-S', 'Bone holding forceps, self-centring, small', 'bone', 190, 190),
    holder('PT-O-BONE-L', 'Bone holding forceps, self-centring, large', 'bone', 260, 420),
    holder('PT-O-WIRE', 'Wire holder', 'wire', 170, 120),
    general('PT-X-ELEV-6', 'Periosteal elevator, 6 mm', 'lifts soft tissue off bone', 190, 60),
    general('PT-X-ELEV-13', 'Periosteal elevator, 13 mm', 'lifts soft tissue off bone', 200, 85),
    general('PT-X-RETR-8', 'Bone lever, 8 mm', 'holds soft tissue away', 160, 70),
    general('PT-X-RETR-18', 'Bone lever, 18 mm', 'holds soft tissue away', 235, 160),
    general('PT-X-RETR-24', 'Bone lever, 24 mm', 'holds soft tissue away', 265, 205),
    general('PT-X-HOOK', 'Bone hook, sharp', 'draws a fragment', 195, 90),
    general('PT-X-CURETTE', 'Curette, small', 'clears a fracture gap', 180, 65),
    general('PT-X-CUTTER', 'Wire cutter', 'cuts wires to 2.0 mm', 235, 410),
    general('PT-X-PLIERS', 'Flat-nosed pliers', 'bends and draws wires', 180, 240),
    general('PT-X-CLEAN-25', 'Cleaning stylet 2.5', 'clears cannulations', 260, 15),
    general('PT-X-HAMMER', 'Hammer, 300 g', null, 220, 340),
    general('PT-X-SCREWOUT', 'Screw extraction bolt, hexagon 2.5', 'removes damaged screws', 90, 55),
    consumable('PT-C-LABEL', 'Label, heat-proof, indicator printed', 'names a packed set', 9, 100),
    consumable('PT-C-FILTER', 'Container filter', 'keeps a container sterile', 22, 100),
    consumable('PT-C-SEAL', 'Container seal', 'shows that nobody opened it', 14, 100),
    consumable('PT-C-POUCH', 'Pouch, 150 × 300 mm', 'packs one item', 31, 200),
    consumable('PT-C-LINER', 'Tray liner', 'keeps pieces from rolling', 48, 50),
  ];
}
