import type { Item, Screw } from '../catalogue/item';
import {
  type Design,
  designsOf,
  itemOf,
  questionOf,
  restrictedPlates,
  THINGS,
  type ThingSort,
} from './designs';
import type { FitEngine } from './engine';
import type { Relation } from './rule';
import { unlikeFamilies } from './unlike-families';

/** What the catalogue check can find. Words: lib/wording/fit-check.ts. */
export type CheckCode =
  | 'screw-without-pilot'
  | 'screw-without-gliding-bit'
  | 'screw-without-driver'
  | 'screw-without-gauge'
  | 'locking-screw-without-limiter'
  | 'screw-seats-nowhere'
  | 'hole-takes-no-screw'
  | 'hole-without-sleeve'
  | 'sleeve-seats-nowhere'
  | 'sleeve-passes-nothing'
  | 'bit-without-sleeve'
  | 'bit-drills-for-nothing'
  | 'driver-turns-nothing'
  | 'shank-joins-nothing'
  | 'limiter-limits-nothing'
  | 'not-stated'
  | 'family-differs';

export interface CheckFinding {
  code: CheckCode;
  /** `doesNotFit`: nothing fits · `notEstablished`: nothing is known to fit, and something might. */
  outcome: 'doesNotFit' | 'notEstablished';
  /** The current items concerned. */
  items: Item[];
  /** Facts not stated, or that differ, `participant.fact`; of which relation. */
  facts: string[];
  relation: Relation | null;
  /** Which holes, where it is about holes: `plate code: S1, S2`. */
  holes: { plate: string; ids: string[] }[];
  /** How many answers wait for the missing facts. */
  waiting: number;
}

interface Need {
  code: CheckCode;
  relation: Relation;
  of: ThingSort;
  among: ThingSort;
  /** Only those it is asked of. */
  when?: (item: Item, design: Design) => boolean;
}

const isScrew = (test: (screw: Screw) => boolean) => (item: Item) => item.kind === 'screw' && test(item);
const drilledFor = isScrew(({ tip }) => tip !== 'selfDrillingSelfTapping');

/** Each: some current `among` has to fit every current `of`. */
const NEEDS: Need[] = [
  { code: 'screw-without-pilot', relation: 'pilots', of: 'screws', among: 'bits', when: drilledFor },
  {
    code: 'screw-without-gliding-bit',
    relation: 'glides',
    of: 'screws',
    among: 'bits',
    when: isScrew((s) => s.screwKind === 'cortical' || s.screwKind === 'cancellousPartial'),
  },
  { code: 'screw-without-driver', relation: 'turns', of: 'screws', among: 'drivers' },
  { code: 'screw-without-gauge', relation: 'measures', of: 'screws', among: 'gauges', when: drilledFor },
  {
    code: 'locking-screw-without-limiter',
    relation: 'limits',
    of: 'screws',
    among: 'limiters',
    when: isScrew((s) => s.screwKind === 'locking'),
  },
  { code: 'screw-seats-nowhere', relation: 'seats', of: 'screws', among: 'holes' },
  {
    code: 'hole-takes-no-screw',
    relation: 'seats',
    of: 'holes',
    among: 'screws',
    when: (_, { things: [thing] }) => thing.is === 'hole' && thing.hole.holeClass !== 'wireHole',
  },
  {
    code: 'hole-without-sleeve',
    relation: 'guides',
    of: 'holes',
    among: 'sleeveEnds',
    when: (_, { things: [thing] }) => thing.is === 'hole' && thing.hole.holeClass !== 'wireHole',
  },
  {
    code: 'sleeve-seats-nowhere',
    relation: 'guides',
    of: 'sleeveEnds',
    among: 'holes',
    when: (_, { things: [thing] }) => thing.is === 'sleeveEnd' && sitsOnHoles(thing.by.end.seatsOn),
  },
  { code: 'sleeve-passes-nothing', relation: 'passes', of: 'sleeveEnds', among: 'bitsAndWires' },
  { code: 'bit-without-sleeve', relation: 'passes', of: 'bits', among: 'sleeveEnds' },
  { code: 'driver-turns-nothing', relation: 'turns', of: 'drivers', among: 'screws' },
  {
    code: 'shank-joins-nothing',
    relation: 'joins',
    of: 'shanks',
    among: 'sockets',
    when: (item) => !('fixedHandle' in item && item.fixedHandle),
  },
  { code: 'limiter-limits-nothing', relation: 'limits', of: 'limiters', among: 'screws' },
];

/** An end made only for bone or a gliding hole needs no plate. */
const sitsOnHoles = (seats: readonly string[] | null) =>
  seats === null || seats.some((seat) => seat !== 'bone' && seat !== 'glidingHole');

const kept = new WeakMap<FitEngine, WeakMap<readonly Item[], CheckFinding[]>>();

/** The findings of `checkCatalogue`, kept for as long as rules and catalogue are the very same; nobody may change them. */
export function keptCheck(engine: FitEngine, catalogue: readonly Item[]): readonly CheckFinding[] {
  const byCatalogue = kept.get(engine) ?? new WeakMap<readonly Item[], CheckFinding[]>();
  kept.set(engine, byCatalogue);
  const known = byCatalogue.get(catalogue) ?? checkCatalogue(engine, catalogue);
  byCatalogue.set(catalogue, known);
  return known;
}

/**
 * Looks through the current items for what can never be used as it stands: nothing that fits it, a fact that
 * rules wait for, a screw family that is not alike. Findings that stop come first, then by code.
 */
export function checkCatalogue(engine: FitEngine, catalogue: readonly Item[]): CheckFinding[] {
  const current = catalogue.filter(({ status }) => status === 'current');
  const waiting = new Map<string, { item: Item; fact: string; relation: Relation; answers: number }>();
  const found = NEEDS.flatMap((need) => unmet(engine, current, need, waiting));
  found.push(...drillsForNothing(engine, current));
  const missing = [...waiting.values()].map(
    ({ item, fact, relation, answers }): CheckFinding => ({
      code: 'not-stated',
      outcome: 'notEstablished',
      items: [item],
      facts: [fact],
      relation,
      holes: [],
      waiting: answers,
    }),
  );
  const all = [...found, ...joined(missing), ...unlikeFamilies(current)];
  return all.sort((a, b) => order(a) - order(b));
}

const order = ({ outcome, code }: CheckFinding) =>
  outcome === 'doesNotFit' ? 0 : code === 'not-stated' ? 2 : 1;

function unmet(
  engine: FitEngine,
  current: readonly Item[],
  { code, relation, of, among, when }: Need,
  waiting: Map<string, { item: Item; fact: string; relation: Relation; answers: number }>,
): CheckFinding[] {
  const plates = restrictedPlates(current);
  const others = designsOf(engine, relation, THINGS[among](current), plates);
  return designsOf(engine, relation, THINGS[of](current), plates).flatMap((design): CheckFinding[] => {
    const item = itemOf(design.things[0]);
    if (!item || (when && !when(item, design))) return [];
    let fits = false;
    let unknown = false;
    for (const other of others) {
      const verdict = engine.ask(questionOf(relation, design.things[0], other.things[0]));
      if (verdict.outcome === 'fits') fits = true;
      if (verdict.outcome !== 'notEstablished') continue;
      unknown = true;
      const facts = new Set(
        verdict.findings.filter(({ severity }) => severity !== 'note').flatMap(({ missing }) => missing),
      );
      for (const fact of facts) {
        for (const side of [design, other]) {
          if (!owns(side, fact)) continue;
          const answers = (side === design ? other : design).things.length;
          for (const thing of side.things) note(waiting, itemOf(thing), fact, relation, answers);
        }
      }
    }
    if (fits) return [];
    const items = [...new Set(design.things.flatMap((thing) => itemOf(thing) ?? []))];
    return [
      {
        code,
        outcome: unknown ? 'notEstablished' : 'doesNotFit',
        items,
        facts: [],
        relation,
        holes: holesOf(design),
        waiting: 0,
      },
    ];
  });
}

function note(
  waiting: Map<string, { item: Item; fact: string; relation: Relation; answers: number }>,
  item: Item | null,
  fact: string,
  relation: Relation,
  answers: number,
): void {
  if (!item) return;
  const key = `${item.id} ${fact.split('.')[1]}`;
  const before = waiting.get(key);
  if (before) before.answers += answers;
  else waiting.set(key, { item, fact, relation, answers });
}

/** Whether a missing fact belongs to this side of the question. */
function owns({ things: [thing] }: Design, fact: string): boolean {
  const participant = fact.split('.')[0] ?? '';
  switch (thing.is) {
    case 'screw':
      return participant === 'screw' || participant === 'second';
    case 'hole':
      return participant === 'hole' || participant === 'plate';
    case 'sleeveEnd':
      return participant === 'sleeve' || participant === 'end';
    case 'shank':
      return participant === 'shank';
    case 'item':
      return [
        'bit',
        'tool',
        'tap',
        'countersink',
        'gauge',
        'driver',
        'limiter',
        'socket',
        'first',
        'plate',
      ].includes(participant);
    case 'limb':
      return false;
  }
}

function holesOf(design: Design): CheckFinding['holes'] {
  const byPlate = new Map<string, string[]>();
  for (const thing of design.things) {
    if (thing.is === 'hole')
      byPlate.set(thing.plate.code, [...(byPlate.get(thing.plate.code) ?? []), thing.hole.id]);
  }
  return [...byPlate].map(([plate, ids]) => ({ plate, ids }));
}

/** Missing facts of the same name, of items of one kind (and screw family), are one finding. */
function joined(findings: CheckFinding[]): CheckFinding[] {
  const groups = new Map<string, CheckFinding>();
  for (const finding of findings) {
    const [item] = finding.items;
    const family = item?.kind === 'screw' ? item.screwFamily : (item?.id ?? '');
    const key = `${item?.kind} ${family} ${finding.facts[0]}`;
    const before = groups.get(key);
    if (before) {
      before.items.push(...finding.items);
      before.waiting += finding.waiting;
    } else groups.set(key, { ...finding, items: [...finding.items] });
  }
  return [...groups.values()];
}

/** A bit that neither pilots nor glides for any current screw, though it may serve wires or other systems. */
function drillsForNothing(engine: FitEngine, current: readonly Item[]): CheckFinding[] {
  const screws = THINGS.screws(current);
  const families = designsOf(engine, 'pilots', screws);
  return THINGS.bits(current).flatMap((bit): CheckFinding[] => {
    const outcomes = families.flatMap(({ things: [screw] }) =>
      (['pilots', 'glides'] as const).map((relation) => engine.ask(questionOf(relation, screw, bit)).outcome),
    );
    if (outcomes.includes('fits')) return [];
    const outcome = outcomes.includes('notEstablished') ? 'notEstablished' : 'doesNotFit';
    return [
      {
        code: 'bit-drills-for-nothing',
        outcome,
        items: itemsOf(bit),
        facts: [],
        relation: 'pilots',
        holes: [],
        waiting: 0,
      },
    ];
  });
}

const itemsOf = (thing: ReturnType<typeof THINGS.bits>[number]): Item[] => [thing.item];
