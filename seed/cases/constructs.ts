import { itemId } from '@/lib/identity/ids';
import {
  type Construct,
  construct,
  type FreeScrew,
  type HoleFill,
  type PlannedLength,
} from '@/lib/plans/plan';
import { idOfCode } from '../catalogue/entry';
import { plates } from '../catalogue/plates';
import { SCREW_FAMILIES } from '../catalogue/screwFamilies';

/** What a plan says about one screw apart from its purpose. */
interface Fixing {
  screwFamily: string;
  cortices: 1 | 2;
  length: PlannedLength;
  acceptLongerMm: number;
}

export const exact = (mm: number): PlannedLength => ({ kind: 'exact', mm });
export const spread = (meanMm: number, sdMm: number): PlannedLength => ({
  kind: 'spread',
  meanMm,
  sdMm,
  sourceNote: null,
});
export const notStated: PlannedLength = { kind: 'notStated' };

/** A named default: lengths at the distal radius, 21.7 ± 2.6 mm, range 16 to 26. */
export const distalRadiusLength: PlannedLength = {
  kind: 'spread',
  meanMm: 21.7,
  sdMm: 2.6,
  sourceNote: 'Distal radius screw lengths, J Orthop Surg Res 2015, doi 10.1186/s13018-015-0283-8',
};

const fixing = (
  codeStem: string,
  length: PlannedLength,
  cortices: 1 | 2,
  acceptLongerMm: number,
): Fixing => ({
  screwFamily: familyOf(codeStem),
  cortices,
  length,
  acceptLongerMm,
});

type Fill = (codeStem: string, length: PlannedLength, cortices?: 1 | 2, acceptLongerMm?: number) => HoleFill;
const screwFill =
  (purpose: 'neutral' | 'offset' | 'lag' | 'locked'): Fill =>
  (codeStem, length, cortices = 2, acceptLongerMm = 0) => ({
    purpose,
    ...fixing(codeStem, length, cortices, acceptLongerMm),
  });

export const neutral = screwFill('neutral');
export const offset = screwFill('offset');
export const lag = screwFill('lag');
export const locked = screwFill('locked');
export const empty: HoleFill = { purpose: 'empty' };
export const wireIn = (code: string): HoleFill => ({
  purpose: 'temporaryWire',
  wireItemId: itemId.parse(idOfCode(code)),
});

/** A lag screw outside any plate. */
export const free = (
  key: string,
  codeStem: string,
  length: PlannedLength,
  washerCode?: string,
): FreeScrew => ({
  key,
  ...fixing(codeStem, length, 2, 2),
  washerItemId: washerCode ? itemId.parse(idOfCode(washerCode)) : null,
});

export interface PlatePlan {
  code: string;
  zoneMm: [number, number] | null;
  principle: Construct['plates'][number]['principle'];
  /** By hole id. A screw hole that is not named is left empty, unless `undecided`. */
  fills: Record<string, HoleFill>;
  undecided?: true;
}

/** A construct written with codes and millimetres; parsed, so that a slip fails here and not on a screen. */
export function constructOf(plan: {
  region: Construct['region'];
  limb: Construct['limb'];
  bone?: Construct['bone'];
  plates?: PlatePlan[];
  freeScrews?: FreeScrew[];
  sharedLengthSdMm?: number;
  note?: string;
}): Construct {
  return construct.parse({
    region: plan.region,
    limb: plan.limb,
    bone: plan.bone ?? 'normal',
    plates: (plan.plates ?? []).map((plate, index) => ({
      key: `P${index + 1}`,
      plateItemId: idOfCode(plate.code),
      zone: plate.zoneMm && { fromUm: plate.zoneMm[0] * 1000, toUm: plate.zoneMm[1] * 1000 },
      principle: plate.principle,
      fills: plate.undecided ? plate.fills : { ...emptyHolesOf(plate.code), ...plate.fills },
    })),
    freeScrews: plan.freeScrews ?? [],
    sharedLengthSdMm: plan.sharedLengthSdMm ?? null,
    note: plan.note ?? null,
  });
}

const SCREW_HOLES = new Map(
  plates().map(({ code, holes }) => [
    code,
    holes.filter((hole) => hole.holeClass !== 'wireHole').map(({ id }) => id),
  ]),
);

function emptyHolesOf(plateCode: string): Record<string, HoleFill> {
  const holes = SCREW_HOLES.get(plateCode);
  if (!holes) throw new Error(`no plate has the code ${plateCode}`);
  return each(holes, empty);
}

/** The same fill for several holes: `each(['S1', 'S2'], neutral('CR-C35', exact(16)))`. */
export function each(holes: string[], fill: HoleFill): Record<string, HoleFill> {
  return Object.fromEntries(holes.map((hole) => [hole, fill]));
}

function familyOf(codeStem: string): string {
  const family = SCREW_FAMILIES.find((known) => known.codeStem === codeStem);
  if (!family) throw new Error(`no screw family has the code ${codeStem}`);
  return family.family;
}
