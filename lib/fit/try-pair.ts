import type { Hole } from '../catalogue/hole';
import type {
  DrillBit,
  DrillingPosition,
  DrillSleeve,
  GuideWire,
  Handle,
  Item,
  ItemKind,
  ItemOf,
  Plate,
  Screw,
  TorqueLimiter,
} from '../catalogue/item';
import { designsOf, type Thing } from './designs';
import type { FitEngine } from './engine';
import type { Question, ScrewUse, Shanked } from './question';

/** What is set against an item when it is no other item. */
export const PARTNERS = ['bone', 'limb-left', 'limb-right'] as const;
export type Partner = (typeof PARTNERS)[number];

/** What a person narrowed the questions to; `null` leaves it open. */
export interface PairChoice {
  holeId: string | null;
  use: ScrewUse | null;
  position: DrillingPosition | null;
}

/** One question that two things raise, and which part of them it is about. */
export interface PairQuestion {
  question: Question;
  /** Holes it stands for, alike to every rule; empty when it is not about holes. */
  holes: Hole[];
  /** Which end of a sleeve, from 1; `null` when it has one or the question is not about one. */
  end: number | null;
}

/**
 * Every question the rules could be asked about two things, whichever is named first. Empty when no relation
 * relates two things of these kinds.
 */
export function pairQuestions(
  engine: FitEngine,
  first: Item,
  second: Item | Partner,
  choice: PairChoice,
): PairQuestion[] {
  if (typeof second === 'string') return withPartner(first, second, choice);
  const pair: [Item, Item] = [first, second];
  const asked: PairQuestion[] = [];
  const plain = (question: Question) => asked.push({ question, holes: [], end: null });
  const screw = one(pair, 'screw');
  const plate = one(pair, 'plate');
  const sleeve = one(pair, 'drillSleeve');
  const bit = one(pair, 'drillBit');
  const wire = one(pair, 'guideWire');

  if (screw && plate) asked.push(...seatQuestions(engine, screw, plate, choice));
  if (sleeve && plate) asked.push(...guideQuestions(engine, sleeve, plate, choice));
  if (sleeve && (bit ?? wire))
    asked.push(...throughSleeve(sleeve, (bit ?? wire) as DrillBit | GuideWire, choice));
  if (screw) for (const question of screwQuestions(screw, pair, choice)) plain(question);
  for (const question of joinQuestions(pair)) plain(question);
  if (pair.every(isImplant)) plain({ relation: 'wearsWith', first, second });
  return asked;
}

function withPartner(item: Item, partner: Partner, choice: PairChoice): PairQuestion[] {
  if (partner === 'bone') {
    if (item.kind !== 'drillSleeve') return [];
    return item.ends.map((end, endIndex) => ({
      question: {
        relation: 'guides',
        by: { sleeve: item, end, endIndex },
        seat: { on: 'bone' },
        position: choice.position,
      },
      holes: [],
      end: endNumber(item, endIndex),
    }));
  }
  if (item.kind !== 'plate') return [];
  const limb = partner === 'limb-left' ? 'left' : 'right';
  return [{ question: { relation: 'sides', plate: item, limb }, holes: [], end: null }];
}

function one<K extends ItemKind>(pair: readonly Item[], kind: K): ItemOf<K> | null {
  return (pair.find((item) => item.kind === kind) as ItemOf<K> | undefined) ?? null;
}

const isImplant = (item: Item) => ['plate', 'screw', 'washer', 'guideWire'].includes(item.kind);
const endNumber = (sleeve: DrillSleeve, index: number) => (sleeve.ends.length > 1 ? index + 1 : null);

/** The holes of a plate that rules of the relation tell apart, or the chosen one. */
function holesOf(
  engine: FitEngine,
  relation: 'seats' | 'guides',
  plate: Plate,
  holeId: string | null,
): Hole[][] {
  const chosen = plate.holes.find(({ id }) => id === holeId);
  if (chosen) return [[chosen]];
  const things = plate.holes.map((hole): Thing => ({ is: 'hole', hole, plate }));
  return designsOf(engine, relation, things, new Set([plate.code])).map(({ things }) =>
    things.flatMap((thing) => (thing.is === 'hole' ? [thing.hole] : [])),
  );
}

function seatQuestions(
  engine: FitEngine,
  screw: Screw,
  plate: Plate,
  { holeId, use }: PairChoice,
): PairQuestion[] {
  return holesOf(engine, 'seats', plate, holeId).flatMap((holes) => {
    const [hole] = holes;
    return hole
      ? [{ question: { relation: 'seats', screw, hole, plate, use } as const, holes, end: null }]
      : [];
  });
}

function guideQuestions(
  engine: FitEngine,
  sleeve: DrillSleeve,
  plate: Plate,
  { holeId, position }: PairChoice,
): PairQuestion[] {
  return holesOf(engine, 'guides', plate, holeId).flatMap((holes) => {
    const [hole] = holes;
    if (!hole) return [];
    return sleeve.ends.map((end, endIndex) => ({
      question: {
        relation: 'guides',
        by: { sleeve, end, endIndex },
        seat: { on: 'hole', hole, plate },
        position,
      } as const,
      holes,
      end: endNumber(sleeve, endIndex),
    }));
  });
}

/** A bit through each end; and, for an insert, the end in the gliding hole that the bit drills. */
function throughSleeve(
  sleeve: DrillSleeve,
  tool: DrillBit | GuideWire,
  { position }: PairChoice,
): PairQuestion[] {
  return sleeve.ends.flatMap((end, endIndex) => {
    const by = { sleeve, end, endIndex };
    const passes: Question = { relation: 'passes', tool, by };
    const seat = { on: 'glidingHole', diameterUm: tool.diameterUm } as const;
    const questions: Question[] =
      end.seatsOn?.includes('glidingHole') && tool.kind === 'drillBit'
        ? [passes, { relation: 'guides', by, seat, position }]
        : [passes];
    return questions.map((question) => ({ question, holes: [], end: endNumber(sleeve, endIndex) }));
  });
}

function screwQuestions(screw: Screw, pair: readonly Item[], { use }: PairChoice): Question[] {
  const other = pair.find((item) => item !== screw);
  switch (other?.kind) {
    case 'drillBit':
      return [
        { relation: 'pilots', bit: other, screw },
        { relation: 'glides', bit: other, screw },
      ];
    case 'tap':
      return [{ relation: 'taps', tap: other, screw }];
    case 'countersink':
      return [{ relation: 'countersinks', countersink: other, screw }];
    case 'depthGauge':
      return [{ relation: 'measures', gauge: other, screw, use }];
    case 'driver':
      return [{ relation: 'turns', driver: other, screw }];
    case 'torqueLimiter':
      return [{ relation: 'limits', limiter: other, screw }];
    default:
      return [];
  }
}

/** Either may be the shank, where both could. */
function joinQuestions([first, second]: [Item, Item]): Question[] {
  const joins = (shank: Item, socket: Item): Question[] =>
    'coupling' in shank && (socket.kind === 'handle' || socket.kind === 'torqueLimiter')
      ? [{ relation: 'joins', shank: shank as Shanked, socket: socket as Handle | TorqueLimiter }]
      : [];
  return first === second ? joins(first, second) : [...joins(first, second), ...joins(second, first)];
}
