import type { Hole } from '../catalogue/hole';
import type { Coupling, Item, ItemKind, ItemOf, Plate, Screw } from '../catalogue/item';
import { namedIn } from './condition';
import type { FitEngine } from './engine';
import { FACTS, type FactValue, PARTICIPANTS } from './facts';
import type { Question, Shanked, SleeveByEnd } from './question';
import type { FitRule, Relation } from './rule';

/** What stands at the head of a row or column of a fit table. */
export type Thing =
  | { is: 'screw'; screw: Screw }
  | { is: 'hole'; hole: Hole; plate: Plate }
  | { is: 'sleeveEnd'; by: SleeveByEnd }
  | { is: 'shank'; item: Shanked }
  | { is: 'item'; item: Item }
  | { is: 'limb'; limb: 'left' | 'right' };

/** Things the rules of a relation cannot tell apart, under one head. */
export interface Design {
  key: string;
  /** Every one of them; the first stands for all. */
  things: [Thing, ...Thing[]];
}

/**
 * Groups things that the rules in force of `relation` cannot tell apart: those alike in every fact any of its
 * rules looks at, and in whether an exception names them. So one answer holds for the whole group, whatever
 * the rules become. Screws are kept apart by screw family as well, because people name them so.
 *
 * `plateCodes` are the plates that some sleeve is restricted to: only those need telling apart by code.
 */
export function designsOf(
  engine: FitEngine,
  relation: Relation,
  things: readonly Thing[],
  plateCodes: ReadonlySet<string> = new Set(),
): Design[] {
  const rules = engine.rules.filter((rule) => rule.relation === relation);
  const facts = namedIn({ all: rules.flatMap((rule) => [rule.appliesWhen, rule.requires]) }).facts;
  const told = platesToldApart(rules, plateCodes);
  const excepted = new Set<string>(
    engine.exceptions
      .filter((exception) => exception.relation === relation)
      .flatMap(({ firstItemId, secondItemId }) => [firstItemId, secondItemId]),
  );
  const groups = new Map<string, Design>();
  for (const thing of things) {
    const key = keyOf(relation, thing, facts, excepted, told);
    const group = groups.get(key);
    if (group) group.things.push(thing);
    else groups.set(key, { key, things: [thing] });
  }
  return [...groups.values()];
}

const RESTRICTION = JSON.stringify({ lists: [{ fact: 'sleeve.onlyForPlates' }, { fact: 'seat.plateCode' }] });

/**
 * Which plate codes make a difference to sleeves: all, when a rule uses the code in a way of its own; else those
 * a sleeve is restricted to.
 */
function platesToldApart(
  rules: readonly FitRule[],
  restricted: ReadonlySet<string>,
): (code: string) => boolean {
  const text = JSON.stringify(rules.map((rule) => [rule.appliesWhen, rule.requires])).replaceAll(
    RESTRICTION,
    '',
  );
  return text.includes('"seat.plateCode"') ? () => true : (code) => restricted.has(code);
}

/** Codes of the plates that sleeves of the catalogue are restricted to. */
export const restrictedPlates = (items: readonly Item[]): Set<string> =>
  new Set(items.flatMap((item) => (item.kind === 'drillSleeve' ? (item.onlyForPlates ?? []) : [])));

function keyOf(
  relation: Relation,
  thing: Thing,
  facts: string[],
  excepted: ReadonlySet<string>,
  told: (code: string) => boolean,
): string {
  const subjects = subjectsOf(relation, thing);
  const values: FactValue[] = [];
  for (const name of facts) {
    const fact = FACTS[relation].get(name);
    if (!fact || !(fact.participant in subjects)) continue;
    const value = fact.read(subjects[fact.participant]);
    values.push(name === 'seat.plateCode' && typeof value === 'string' && !told(value) ? 'any other' : value);
  }
  const item = itemOf(thing);
  const named = item && excepted.has(item.id) ? item.id : '';
  const apart = thing.is === 'screw' ? thing.screw.screwFamily : thing.is === 'limb' ? thing.limb : '';
  return JSON.stringify([thing.is, apart, named, values]);
}

/** The thing as the participants it stands for in the relation. A hole also stands for what a sleeve sits on. */
function subjectsOf(relation: Relation, thing: Thing): Record<string, unknown> {
  const participants = PARTICIPANTS[relation];
  switch (thing.is) {
    case 'screw':
      return 'second' in participants ? { second: thing.screw } : { screw: thing.screw };
    case 'hole':
      return {
        hole: thing.hole,
        plate: thing.plate,
        seat: { on: 'hole', name: thing.hole.holeClass, plateCode: thing.plate.code },
      };
    case 'sleeveEnd':
      return { sleeve: thing.by.sleeve, end: thing.by.end };
    case 'shank':
      return { shank: thing.item };
    case 'limb':
      return { limb: { side: thing.limb } };
    case 'item': {
      const subject = Object.entries(participants).find(([name, { subject }]) =>
        standsFor(thing.item.kind, name, subject),
      );
      return subject ? { [subject[0]]: thing.item } : {};
    }
  }
}

function standsFor(kind: ItemKind, name: string, subject: string): boolean {
  if (name === 'first' || name === 'second') return true;
  const subjects: Partial<Record<ItemKind, string[]>> = {
    drillBit: ['bit', 'tool'],
    guideWire: ['tool'],
    tap: ['tap'],
    countersink: ['countersink'],
    depthGauge: ['gauge'],
    driver: ['driver'],
    handle: ['socket'],
    torqueLimiter: ['limiter', 'socket'],
    plate: ['plate'],
  };
  return subjects[kind]?.includes(subject) ?? false;
}

/** The catalogue entry a thing is, or is part of. */
export function itemOf(thing: Thing): Item | null {
  switch (thing.is) {
    case 'screw':
      return thing.screw;
    case 'hole':
      return thing.plate;
    case 'sleeveEnd':
      return thing.by.sleeve;
    case 'shank':
    case 'item':
      return thing.item;
    case 'limb':
      return null;
  }
}

const ofKind = <K extends ItemKind>(items: readonly Item[], kind: K) =>
  items.filter((item): item is ItemOf<K> => item.kind === kind);

/** All things of one sort in a catalogue, in its order. */
export const THINGS = {
  screws: (items) => ofKind(items, 'screw').map((screw) => ({ is: 'screw', screw })),
  holes: (items) =>
    ofKind(items, 'plate').flatMap((plate) =>
      plate.holes.map((hole) => ({ is: 'hole', hole, plate }) as const),
    ),
  sleeveEnds: (items) =>
    ofKind(items, 'drillSleeve').flatMap((sleeve) =>
      sleeve.ends.map((end, endIndex) => ({ is: 'sleeveEnd', by: { sleeve, end, endIndex } }) as const),
    ),
  bits: (items) => ofKind(items, 'drillBit').map((item) => ({ is: 'item', item })),
  bitsAndWires: (items) =>
    [...ofKind(items, 'drillBit'), ...ofKind(items, 'guideWire')].map((item) => ({ is: 'item', item })),
  taps: (items) => ofKind(items, 'tap').map((item) => ({ is: 'item', item })),
  countersinks: (items) => ofKind(items, 'countersink').map((item) => ({ is: 'item', item })),
  gauges: (items) => ofKind(items, 'depthGauge').map((item) => ({ is: 'item', item })),
  drivers: (items) => ofKind(items, 'driver').map((item) => ({ is: 'item', item })),
  limiters: (items) => ofKind(items, 'torqueLimiter').map((item) => ({ is: 'item', item })),
  shanks: (items) =>
    items
      .filter(
        (item): item is Shanked => 'coupling' in item && (item.coupling as Coupling | null) !== undefined,
      )
      .map((item) => ({ is: 'shank', item })),
  sockets: (items) =>
    [...ofKind(items, 'handle'), ...ofKind(items, 'torqueLimiter')].map((item) => ({ is: 'item', item })),
  plates: (items) => ofKind(items, 'plate').map((item) => ({ is: 'item', item })),
  limbs: () => [
    { is: 'limb', limb: 'left' },
    { is: 'limb', limb: 'right' },
  ],
} satisfies Record<string, (items: readonly Item[]) => Thing[]>;
export type ThingSort = keyof typeof THINGS;

/** Each relation as a table: what its rows and columns are. */
export const TABLE_AXES: Record<Relation, { rows: ThingSort; columns: ThingSort }> = {
  seats: { rows: 'holes', columns: 'screws' },
  guides: { rows: 'holes', columns: 'sleeveEnds' },
  passes: { rows: 'sleeveEnds', columns: 'bitsAndWires' },
  pilots: { rows: 'screws', columns: 'bits' },
  glides: { rows: 'screws', columns: 'bits' },
  taps: { rows: 'screws', columns: 'taps' },
  countersinks: { rows: 'screws', columns: 'countersinks' },
  measures: { rows: 'screws', columns: 'gauges' },
  turns: { rows: 'screws', columns: 'drivers' },
  joins: { rows: 'shanks', columns: 'sockets' },
  limits: { rows: 'screws', columns: 'limiters' },
  wearsWith: { rows: 'plates', columns: 'screws' },
  sides: { rows: 'plates', columns: 'limbs' },
};

/** The question of a table's cell. Throws when the two are not what the relation relates: a bug of the caller. */
export function questionOf(relation: Relation, row: Thing, column: Thing): Question {
  const item = (kind: ItemKind) => {
    const found = [row, column].find((thing) => thing.is === 'item' && thing.item.kind === kind);
    if (found?.is !== 'item') throw new Error(`${relation} needs a ${kind}`);
    return found.item as never;
  };
  const of = <T extends Thing['is']>(is: T): Extract<Thing, { is: T }> => {
    const found = [row, column].find((thing) => thing.is === is);
    if (!found) throw new Error(`${relation} needs a ${is}`);
    return found as Extract<Thing, { is: T }>;
  };
  switch (relation) {
    case 'seats': {
      const { hole, plate } = of('hole');
      return { relation, screw: of('screw').screw, hole, plate, use: null };
    }
    case 'guides': {
      const { hole, plate } = of('hole');
      return { relation, by: of('sleeveEnd').by, seat: { on: 'hole', hole, plate }, position: null };
    }
    case 'passes':
      return { relation, tool: of('item').item as never, by: of('sleeveEnd').by };
    case 'pilots':
    case 'glides':
      return { relation, bit: item('drillBit'), screw: of('screw').screw };
    case 'taps':
      return { relation, tap: item('tap'), screw: of('screw').screw };
    case 'countersinks':
      return { relation, countersink: item('countersink'), screw: of('screw').screw };
    case 'measures':
      return { relation, gauge: item('depthGauge'), screw: of('screw').screw, use: null };
    case 'turns':
      return { relation, driver: item('driver'), screw: of('screw').screw };
    case 'joins':
      return { relation, shank: of('shank').item, socket: of('item').item as never };
    case 'limits':
      return { relation, limiter: item('torqueLimiter'), screw: of('screw').screw };
    case 'wearsWith':
      return { relation, first: of('item').item, second: of('screw').screw };
    case 'sides':
      return { relation, plate: item('plate'), limb: of('limb').limb };
  }
}
