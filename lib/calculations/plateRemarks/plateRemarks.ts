import { plateRemarkWords } from '@/lib/wording/plate-remarks';
import type { Answer, WorkingStep } from '../calculation';
import {
  COMMON_PRACTICE,
  NO_RANGE_SOURCE,
  POOR_BONE_SOURCE,
  PUBLISHED,
  type PublishedRange,
} from './published';
import type {
  PlateRemark,
  PlateRemarksInput,
  PlateRemarksOutput,
  RemarkedHole,
  RemarkedPlate,
  RemarkName,
} from './schema';

type Fragment = NonNullable<PlateRemark['fragment']>;
const FRAGMENTS: readonly Fragment[] = ['shaftEnd', 'farEnd'];

/**
 * Advisory remarks on stated plates: each a figure beside a published range and its source, or a note. Millimetres.
 * None blocks anything and none proposes anything; a figure that cannot be worked out says what is missing.
 */
export function plateRemarks(input: PlateRemarksInput): Answer<PlateRemarksOutput> {
  const all = input.plates.flatMap((plate) => [
    ...rangeRemarks(plate),
    ...poorBoneRemark(plate, input.bone),
    ...nearFractureRemark(plate),
    ...orderRemarks(plate),
  ]);
  const remarks = all.filter(({ remark }) => !input.off.includes(remark));
  const working: WorkingStep[] = remarks.flatMap(({ plate, remark, fragment, figure, range }) =>
    figure === null
      ? []
      : [
          {
            label: `${plate}: ${plateRemarkWords.name[remark]}${fragment ? `, ${plateRemarkWords.fragment[fragment]}` : ''}`,
            expression: plateRemarkWords.expression[remark],
            value: `${round(figure)}${range ? ` (published: ${plateRemarkWords.range(range)})` : ''}`,
          },
        ],
  );
  return { outcome: 'answered', answer: { remarks }, working };
}

function rangeRemarks(plate: RemarkedPlate): PlateRemark[] {
  const { zone, plateLengthMm, principle, holes } = plate;
  const noZone = zone ? [] : [plateRemarkWords.missing.zone];
  const undecided = holes.filter(({ fill }) => fill === 'notDecided').map(({ hole }) => hole);
  const undecidedWords = undecided.length > 0 ? [plateRemarkWords.missing.fills(undecided)] : [];
  const ranged = (
    remark: RemarkName,
    kind: keyof typeof PUBLISHED,
    figure: number,
    missing: readonly string[],
    more: { holes?: readonly RemarkedHole[]; fragment?: Fragment } = {},
  ) =>
    judged(
      plate,
      remark,
      principle ? PUBLISHED[kind][principle] : undefined,
      NO_RANGE_SOURCE[kind],
      figure,
      missing,
      more,
    );

  const zoneMm = zone ? zone.toMm - zone.fromMm : 0;
  const screwHoles = holes.filter(({ fill }) => fill !== 'temporaryWire');
  const remarks = [
    ranged('span-ratio', 'spanRatio', (plateLengthMm ?? 0) / zoneMm, [
      ...noZone,
      ...(zone && zoneMm === 0 ? [plateRemarkWords.missing.zoneWidth] : []),
      ...(plateLengthMm === null ? [plateRemarkWords.missing.plateLength] : []),
    ]),
    ranged('screw-density', 'density', screwHoles.filter(isScrew).length / screwHoles.length, [
      ...(screwHoles.length === 0 ? [plateRemarkWords.missing.holes] : []),
      ...undecidedWords,
    ]),
  ];
  for (const fragment of FRAGMENTS) {
    const own = holes.filter((hole) => zone !== null && fragmentOf(hole, zone) === fragment);
    const screws = own.filter(isScrew);
    const unsaid = own.filter(({ fill }) => fill === 'notDecided').map(({ hole }) => hole);
    const missing = [...noZone, ...(unsaid.length > 0 ? [plateRemarkWords.missing.fills(unsaid)] : [])];
    const noCortices = screws.filter(({ cortices }) => cortices === null).map(({ hole }) => hole);
    remarks.push(
      ranged('fragment-screws', 'screws', screws.length, missing, { holes: screws, fragment }),
      ranged(
        'fragment-cortices',
        'cortices',
        screws.reduce((sum, { cortices }) => sum + (cortices ?? 0), 0),
        [...missing, ...(noCortices.length > 0 ? [plateRemarkWords.missing.cortices(noCortices)] : [])],
        { holes: screws, fragment },
      ),
    );
  }
  const over = holes.filter(({ alongMm }) => zone !== null && alongMm >= zone.fromMm && alongMm <= zone.toMm);
  const free = over.filter(({ fill }) => fill === 'empty');
  const overUndecided = over.filter(({ fill }) => fill === 'notDecided').map(({ hole }) => hole);
  remarks.push(
    ranged(
      'free-holes-over-zone',
      'freeHoles',
      free.length,
      [...noZone, ...(overUndecided.length > 0 ? [plateRemarkWords.missing.fills(overUndecided)] : [])],
      { holes: free },
    ),
  );
  return remarks;
}

function judged(
  plate: RemarkedPlate,
  remark: RemarkName,
  range: PublishedRange | undefined,
  source: string,
  figure: number,
  missing: readonly string[],
  more: { holes?: readonly RemarkedHole[]; fragment?: Fragment },
): PlateRemark {
  const known = missing.length === 0;
  const outcome = !known
    ? 'notEstablished'
    : !range
      ? 'figure'
      : isWithin(figure, range)
        ? 'within'
        : 'outside';
  const row = {
    plate: plate.plate,
    remark,
    fragment: more.fragment ?? null,
    outcome,
    figure: known ? figure : null,
    range: range ? { sense: range.sense, from: range.from, to: range.to } : null,
    holes: (more.holes ?? []).map(({ hole }) => hole),
    missing: [...missing],
    source: range?.source ?? source,
    sourceFromMemory: range?.fromMemory ?? true,
    advisory: true,
  } satisfies Omit<PlateRemark, 'sentence'>;
  return { ...row, sentence: plateRemarkWords.figureSentence(row) };
}

/** One-cortex self-drilling screws in bone the surgeon calls poor. */
function poorBoneRemark(plate: RemarkedPlate, bone: PlateRemarksInput['bone']): PlateRemark[] {
  if (bone !== 'poor') return [];
  const suspects = plate.holes.filter((hole) => isScrew(hole) && hole.cortices !== 2);
  const certain = suspects.filter(({ cortices, tip }) => cortices === 1 && tip === 'selfDrillingSelfTapping');
  const unsure = suspects.filter(
    ({ cortices, tip }) =>
      (tip === null || tip === 'selfDrillingSelfTapping') && (cortices === null || tip === null),
  );
  return [
    ...note(plate, 'poor-bone-one-cortex', certain, POOR_BONE_SOURCE, true),
    ...unknown(
      plate,
      'poor-bone-one-cortex',
      unsure,
      plateRemarkWords.missing.tipOrCortices,
      POOR_BONE_SOURCE,
      true,
    ),
  ];
}

/** Screws other than lag screws nearer to an end of the fracture zone than their own thread is thick. */
function nearFractureRemark(plate: RemarkedPlate): PlateRemark[] {
  const { zone } = plate;
  if (!zone) return [];
  // whole micrometres, so that exactly one diameter is never called nearer
  const um = (lengthMm: number) => Math.round(lengthMm * 1000);
  const distanceUm = ({ alongMm }: RemarkedHole) =>
    Math.min(Math.abs(um(alongMm) - um(zone.fromMm)), Math.abs(um(alongMm) - um(zone.toMm)));
  const screws = plate.holes.filter((hole) => isScrew(hole) && hole.fill !== 'lag');
  const near = screws.filter((hole) => hole.threadMm !== null && distanceUm(hole) < um(hole.threadMm));
  // no screw here is thicker than 10 mm: further off than that needs no thread to judge
  const unsure = screws.filter((hole) => hole.threadMm === null && distanceUm(hole) < 10_000);
  return [
    ...note(plate, 'near-fracture-line', near, COMMON_PRACTICE, false),
    ...unknown(plate, 'near-fracture-line', unsure, plateRemarkWords.missing.thread, COMMON_PRACTICE, false),
  ];
}

/** Plain and locking screws in one main fragment: the plain ones are set and tightened first. */
function orderRemarks(plate: RemarkedPlate): PlateRemark[] {
  const { zone } = plate;
  const groups = zone
    ? FRAGMENTS.map((fragment) => ({
        fragment,
        holes: plate.holes.filter((hole) => fragmentOf(hole, zone) === fragment),
      }))
    : [{ fragment: null, holes: plate.holes }];
  return groups.flatMap(({ fragment, holes }) => {
    const plain = holes.filter(({ fill }) => fill === 'plain' || fill === 'lag');
    const locking = holes.filter(({ fill }) => fill === 'locking');
    if (plain.length === 0 || locking.length === 0) return [];
    const names = (group: readonly RemarkedHole[]) => group.map(({ hole }) => hole);
    const sentence = plateRemarkWords.order(names(plain), names(locking), fragment);
    return note(plate, 'plain-before-locking', [...plain, ...locking], COMMON_PRACTICE, false, {
      fragment,
      sentence,
    });
  });
}

function note(
  { plate }: RemarkedPlate,
  remark: RemarkName,
  holes: readonly RemarkedHole[],
  source: string,
  sourceFromMemory: boolean,
  more: { fragment?: Fragment | null; sentence?: string } = {},
): PlateRemark[] {
  if (holes.length === 0) return [];
  const names = holes.map(({ hole }) => hole);
  return [
    {
      plate,
      remark,
      fragment: more.fragment ?? null,
      outcome: 'note',
      figure: null,
      range: null,
      holes: names,
      missing: [],
      sentence: more.sentence ?? plateRemarkWords.note(remark, names),
      source,
      sourceFromMemory,
      advisory: true,
    },
  ];
}

function unknown(
  plate: RemarkedPlate,
  remark: RemarkName,
  holes: readonly RemarkedHole[],
  missing: (holes: readonly string[]) => string,
  source: string,
  sourceFromMemory: boolean,
): PlateRemark[] {
  const names = holes.map(({ hole }) => hole);
  return note(plate, remark, holes, source, sourceFromMemory).map((row) => ({
    ...row,
    outcome: 'notEstablished',
    missing: [missing(names)],
    sentence: plateRemarkWords.notEstablished(remark),
  }));
}

function isScrew({ fill }: RemarkedHole): boolean {
  return fill === 'plain' || fill === 'lag' || fill === 'locking';
}

/** A hole whose centre lies over the zone belongs to neither main fragment. */
function fragmentOf({ alongMm }: RemarkedHole, zone: { fromMm: number; toMm: number }): Fragment | null {
  if (alongMm < zone.fromMm) return 'shaftEnd';
  return alongMm > zone.toMm ? 'farEnd' : null;
}

/** Compared in thousandths: a density of 5 in 10 is at most 0.5 whatever binary makes of it. */
function isWithin(figure: number, { sense, from, to }: PublishedRange): boolean {
  const thousandths = Math.round(figure * 1000);
  const reaches = thousandths >= Math.round(from * 1000);
  const keeps = thousandths <= Math.round(to * 1000);
  return sense === 'atLeast' ? reaches : sense === 'atMost' ? keeps : reaches && keeps;
}

function round(figure: number): number {
  return Math.round(figure * 100) / 100;
}
