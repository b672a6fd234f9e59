import {
  designsOf,
  itemOf,
  questionOf,
  restrictedPlates,
  TABLE_AXES,
  THINGS,
  type Thing,
} from '../fit/designs';
import type { FitEngine } from '../fit/engine';
import type { Outcome } from '../fit/question';
import type { Relation } from '../fit/rule';
import type { Item } from './item';

/** What an item goes together with in one relation, by the rules in force. */
export interface Partners {
  relation: Relation;
  fits: Partner[];
  notEstablished: Partner[];
  /** How many entries of the catalogue it was asked of, and does not fit. */
  doesNotFit: number;
}

/** Entries alike in everything the rules look at, and the parts of this item they go with. */
export interface Partner {
  /** Screws of one screw family stand together; the first is shown. */
  items: Item[];
  /** Holes or ends of the item that they go with; empty where the item takes part as a whole. */
  by: string[];
}

/** Relations that are about a choice in a plan rather than about what goes with what. */
const NOT_ASKED: ReadonlySet<Relation> = new Set(['wearsWith', 'sides']);

/**
 * Asks the rules what of a catalogue an item fits, relation by relation. A partner fits when it fits any hole or end; it
 * is not established when no part of it fits and the answer for some part is missing a value.
 */
export function partnersOf(engine: FitEngine, catalogue: readonly Item[], item: Item): Partners[] {
  const others = catalogue.filter((other) => other.status === 'current' && other.id !== item.id);
  const plates = restrictedPlates(catalogue);
  return (Object.keys(TABLE_AXES) as Relation[])
    .filter((relation) => !NOT_ASKED.has(relation))
    .flatMap((relation) => {
      const { rows, columns } = TABLE_AXES[relation];
      return [
        partnersIn(engine, relation, THINGS[rows]([item]), THINGS[columns](others), plates),
        partnersIn(engine, relation, THINGS[columns]([item]), THINGS[rows](others), plates),
      ];
    })
    .filter((partners): partners is Partners => partners !== null);
}

function partnersIn(
  engine: FitEngine,
  relation: Relation,
  own: readonly Thing[],
  others: readonly Thing[],
  plates: ReadonlySet<string>,
): Partners | null {
  if (own.length === 0 || others.length === 0) return null;
  const mine = designsOf(engine, relation, own, plates);
  const best = new Map<string, { items: Map<string, Item>; outcome: Outcome; by: string[] }>();
  for (const { things } of designsOf(engine, relation, others, plates)) {
    const answers = mine.map((design) => ({
      parts: design.things.flatMap((thing) => partOf(thing) ?? []),
      outcome: engine.ask(questionOf(relation, design.things[0], things[0])).outcome,
    }));
    const outcome = bestOf(answers.map((answer) => answer.outcome));
    const by = answers.flatMap((answer) =>
      answer.outcome === outcome && outcome !== 'doesNotFit' ? answer.parts : [],
    );
    for (const thing of things) {
      const other = itemOf(thing);
      if (!other) continue;
      const key = other.kind === 'screw' ? `screw ${other.screwFamily}` : other.id;
      const before = best.get(key) ?? {
        items: new Map<string, Item>(),
        outcome: 'doesNotFit' as Outcome,
        by: [],
      };
      before.items.set(other.id, other);
      if (better(outcome, before.outcome)) {
        before.outcome = outcome;
        before.by = by;
      }
      best.set(key, before);
    }
  }
  const partners = [...best.values()].map(({ items, outcome, by }) => ({
    items: [...items.values()],
    outcome,
    by: [...new Set(by)],
  }));
  const of = (outcome: Outcome): Partner[] =>
    partners.filter((partner) => partner.outcome === outcome).map(({ items, by }) => ({ items, by }));
  return {
    relation,
    fits: of('fits'),
    notEstablished: of('notEstablished'),
    doesNotFit: of('doesNotFit').reduce((count, { items }) => count + items.length, 0),
  };
}

const RANK: Record<Outcome, number> = { fits: 2, notEstablished: 1, doesNotFit: 0 };
const better = (a: Outcome, b: Outcome): boolean => RANK[a] > RANK[b];

function bestOf(outcomes: readonly Outcome[]): Outcome {
  return outcomes.reduce<Outcome>((best, outcome) => (better(outcome, best) ? outcome : best), 'doesNotFit');
}

/** The part of an item a thing is: its hole or end, in words. */
function partOf(thing: Thing): string | null {
  if (thing.is === 'hole') return thing.hole.id;
  if (thing.is === 'sleeveEnd' && thing.by.sleeve.ends.length > 1) return `end ${thing.by.endIndex + 1}`;
  return null;
}
