import type { Hole } from '@/lib/catalogue/hole';
import type { Item, Plate, Screw } from '@/lib/catalogue/item';
import type { Question, Verdict } from '@/lib/fit/question';
import { itemId, makerId } from '@/lib/identity/ids';
import type { FitAnswers } from '@/lib/plans/fitFindings';
import type { Construct, HoleFill } from '@/lib/plans/plan';

/** Small invented things to plan with. Dimensions are round numbers, not any design's. */

const common = {
  nickname: null,
  makerId: makerId.parse('maker_test'),
  side: null,
  material: 'iso5832-1' as const,
  suppliedSterile: false,
  use: 'reprocessable' as const,
  reprocessingLimit: null,
  massGrams: 1,
  unitCostPence: null,
  packMultiple: 1,
  gtin: null,
  partsPerPiece: 1,
  status: 'current' as const,
};

export function holeOf(id: string, more: Partial<Hole> = {}): Hole {
  return {
    id,
    segment: 'shaft',
    holeClass: 'compressionSlot',
    alongUm: 10_000 * Number(id.replace(/\D/g, '')),
    acrossUm: 0,
    tiltAlongDegrees: 0,
    tiltAcrossDegrees: 0,
    openingUm: 4000,
    seatUm: 7000,
    plainSeat: 'spherical',
    slotUm: 8000,
    lockingFamily: null,
    lockingConeDegrees: null,
    ...more,
  };
}

export function plateOf(more: Partial<Plate> = {}): Plate {
  return {
    ...common,
    id: itemId.parse('item_plate'),
    code: 'PLATE',
    name: 'Test plate',
    kind: 'plate',
    side: 'either',
    shape: 'straightNarrow',
    takesThreadsUm: [3500],
    lengthUm: 50_000,
    widthUm: 10_000,
    headWidthUm: null,
    thicknessUm: 3000,
    lookAlikeOf: null,
    holes: [holeOf('S1'), holeOf('S2'), holeOf('S3')],
    ...more,
  };
}

export function screwOf(lengthMm: number | null, more: Partial<Screw> = {}): Screw {
  const family = more.screwFamily ?? 'cortical 3.5';
  const slug = family.replace(/[^a-z0-9]+/gi, '-').toLowerCase();
  return {
    ...common,
    id: itemId.parse(`item_${slug}-${lengthMm ?? 'x'}`),
    code: `${slug}-${lengthMm ?? 'x'}`,
    name: `Screw ${family} ${lengthMm ?? ''}`,
    kind: 'screw',
    screwKind: 'cortical',
    screwFamily: family,
    threadForm: 'HA',
    threadUm: 3500,
    coreUm: 2400,
    shaftUm: null,
    threadLengthUm: null,
    pitchUm: 1250,
    head: 'spherical',
    headUm: 6000,
    lockingFamily: null,
    drive: { form: 'hexagonSocket', acrossFlatsUm: 2500 },
    tip: 'selfTapping',
    cannulationUm: null,
    torqueNmm: null,
    countersinkStated: false,
    lengthUm: lengthMm === null ? null : lengthMm * 1000,
    ...more,
  };
}

export function washerOf(innerUm: number | null, status: Item['status'] = 'current'): Item {
  const id = itemId.parse('item_washer');
  return {
    ...common,
    status,
    id,
    code: 'WASHER',
    name: 'Test washer',
    kind: 'washer',
    innerUm,
    outerUm: 9000,
  };
}

export function wireOf(diameterUm: number | null): Item {
  const id = itemId.parse('item_wire');
  return {
    ...common,
    id,
    code: 'WIRE',
    name: 'Test wire',
    kind: 'guideWire',
    diameterUm,
    lengthUm: 150_000,
    threadedTip: null,
  };
}

export const neutral = (mm: number | null, screwFamily = 'cortical 3.5'): HoleFill => ({
  purpose: 'neutral',
  screwFamily,
  cortices: 2,
  length: mm === null ? { kind: 'notStated' } : { kind: 'exact', mm },
  acceptLongerMm: 0,
});

export function constructOf(fills: Record<string, HoleFill>, more: Partial<Construct> = {}): Construct {
  return {
    region: 'forearmShaft',
    limb: 'left',
    bone: 'normal',
    plates: [{ key: 'P1', plateItemId: itemId.parse('item_plate'), zone: null, principle: null, fills }],
    freeScrews: [],
    sharedLengthSdMm: null,
    note: null,
    ...more,
  };
}

/** Answers every question alike, or by relation: for tests of what is asked and said, not of the rules. */
export function answering(by: Partial<Record<Question['relation'], Verdict['outcome']>> = {}): FitAnswers {
  return {
    ask(question) {
      const outcome = by[question.relation] ?? 'fits';
      return {
        relation: question.relation,
        outcome,
        findings: outcome === 'fits' ? [] : [findingFor(outcome)],
      };
    },
  };
}

function findingFor(outcome: 'doesNotFit' | 'notEstablished'): Verdict['findings'][number] {
  return {
    from: { kind: 'noRule' },
    ...(outcome === 'doesNotFit' && { from: { kind: 'exception', id: 'exception_test' as never } }),
    answer: outcome === 'doesNotFit' ? 'notMet' : 'missing',
    severity: 'stops',
    sentence: 'The test says so.',
    source: null,
    seen: [],
    missing: outcome === 'notEstablished' ? ['screw.headUm'] : [],
    outranked: false,
  };
}
