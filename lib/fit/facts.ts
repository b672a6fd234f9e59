import type { Question } from './question';
import type { Relation } from './rule';
import type { Fact, FactUnit, FactValue, Seat } from './subjects';
import * as subjects from './subjects';

export type { FactUnit, FactValue } from './subjects';

export type QuestionOf<R extends Relation> = Extract<Question, { relation: R }>;

/** The kinds of thing that take part in questions, each with its own facts. */
export const SUBJECT_FACTS = {
  item: subjects.itemFacts,
  screw: subjects.screwFacts,
  hole: subjects.holeFacts,
  plate: subjects.plateFacts,
  use: subjects.useFacts,
  sleeve: subjects.sleeveFacts,
  end: subjects.endFacts,
  seat: subjects.seatFacts,
  glidingHole: subjects.glidingHoleFacts,
  drilling: subjects.drillingFacts,
  limb: subjects.limbFacts,
  bit: subjects.bitFacts,
  tool: subjects.toolFacts,
  tap: subjects.tapFacts,
  countersink: subjects.countersinkFacts,
  gauge: subjects.gaugeFacts,
  driver: subjects.driverFacts,
  shank: subjects.shankFacts,
  socket: subjects.socketFacts,
  limiter: subjects.limiterFacts,
} as const;
export type SubjectName = keyof typeof SUBJECT_FACTS;
export type FactNameOf<S extends SubjectName> = keyof (typeof SUBJECT_FACTS)[S] & string;

/** One participant of a relation: who it is, what can be asked of it, and whether it may stay away. */
export interface Participant {
  subject: SubjectName;
  /** True when a question of the relation can be asked without it. */
  optional: boolean;
  /** The participant in a question, or `null` when it does not take part in this one. */
  of: (question: Question) => unknown;
}

type SubjectOf<S extends SubjectName> =
  (typeof SUBJECT_FACTS)[S] extends Record<string, Fact<infer T>> ? T : never;

function always<R extends Relation, S extends SubjectName>(
  _relation: R,
  subject: S,
  of: (question: QuestionOf<R>) => SubjectOf<S>,
): Participant {
  return { subject, optional: false, of: of as (question: Question) => unknown };
}

function sometimes<R extends Relation, S extends SubjectName>(
  _relation: R,
  subject: S,
  of: (question: QuestionOf<R>) => SubjectOf<S> | null,
): Participant {
  return { subject, optional: true, of: of as (question: Question) => unknown };
}

function seatOf({ seat }: QuestionOf<'guides'>): Seat {
  if (seat.on === 'hole')
    return { on: 'hole', name: seat.hole.holeClass, plateCode: seat.plate?.code ?? null };
  return { on: seat.on, name: seat.on, plateCode: null };
}

/**
 * Who takes part in each relation, under the name conditions use (`screw.threadUm`, `hole.holeClass`).
 * A fact of an optional participant that stays away makes the rule not apply, unless the rule itself
 * says what `takesPart` (see engine.ts).
 */
export const PARTICIPANTS: Record<Relation, Record<string, Participant>> = {
  seats: {
    screw: always('seats', 'screw', (q) => q.screw),
    hole: always('seats', 'hole', (q) => q.hole),
    plate: sometimes('seats', 'plate', (q) => q.plate),
    use: sometimes('seats', 'use', (q) => q.use),
  },
  guides: {
    sleeve: always('guides', 'sleeve', (q) => q.by.sleeve),
    end: always('guides', 'end', (q) => q.by.end),
    seat: always('guides', 'seat', seatOf),
    hole: sometimes('guides', 'hole', (q) => (q.seat.on === 'hole' ? q.seat.hole : null)),
    plate: sometimes('guides', 'plate', (q) => (q.seat.on === 'hole' ? q.seat.plate : null)),
    glidingHole: sometimes('guides', 'glidingHole', (q) => (q.seat.on === 'glidingHole' ? q.seat : null)),
    drilling: sometimes('guides', 'drilling', (q) => (q.position === null ? null : { position: q.position })),
  },
  passes: {
    tool: always('passes', 'tool', (q) => q.tool),
    sleeve: always('passes', 'sleeve', (q) => q.by.sleeve),
    end: always('passes', 'end', (q) => q.by.end),
  },
  pilots: {
    bit: always('pilots', 'bit', (q) => q.bit),
    screw: always('pilots', 'screw', (q) => q.screw),
  },
  glides: {
    bit: always('glides', 'bit', (q) => q.bit),
    screw: always('glides', 'screw', (q) => q.screw),
  },
  taps: {
    tap: always('taps', 'tap', (q) => q.tap),
    screw: always('taps', 'screw', (q) => q.screw),
  },
  countersinks: {
    countersink: always('countersinks', 'countersink', (q) => q.countersink),
    screw: always('countersinks', 'screw', (q) => q.screw),
  },
  measures: {
    gauge: always('measures', 'gauge', (q) => q.gauge),
    screw: always('measures', 'screw', (q) => q.screw),
    use: sometimes('measures', 'use', (q) => q.use),
  },
  turns: {
    driver: always('turns', 'driver', (q) => q.driver),
    screw: always('turns', 'screw', (q) => q.screw),
  },
  joins: {
    shank: always('joins', 'shank', (q) => q.shank),
    socket: always('joins', 'socket', (q) => q.socket),
  },
  limits: {
    limiter: always('limits', 'limiter', (q) => q.limiter),
    screw: always('limits', 'screw', (q) => q.screw),
  },
  wearsWith: {
    first: always('wearsWith', 'item', (q) => q.first),
    second: always('wearsWith', 'item', (q) => q.second),
  },
  sides: {
    plate: always('sides', 'plate', (q) => q.plate),
    limb: always('sides', 'limb', (q) => ({ side: q.limb })),
  },
};

/** A fact as editors, checks and the engine need it. */
export interface DeclaredFact {
  /** `screw.threadUm` */
  name: string;
  participant: string;
  subject: SubjectName;
  /** `threadUm` */
  fact: string;
  unit: FactUnit;
  choices: readonly string[] | null;
  /** What to ask for when it is missing: itself, or the stated fact it is derived from. */
  statedAs: string;
  read: (subject: unknown) => FactValue;
}

function declared(relation: Relation): Map<string, DeclaredFact> {
  const all = new Map<string, DeclaredFact>();
  for (const [participant, { subject }] of Object.entries(PARTICIPANTS[relation])) {
    for (const [fact, { unit, choices, from, read }] of Object.entries(
      SUBJECT_FACTS[subject] as Record<string, Fact<never>>,
    )) {
      const name = `${participant}.${fact}`;
      const reader = read as (subject: unknown) => FactValue;
      all.set(name, {
        name,
        participant,
        subject,
        fact,
        unit,
        choices: choices ?? null,
        statedAs: `${participant}.${from ?? fact}`,
        read: reader,
      });
    }
  }
  return all;
}

/** Every fact a rule of the relation may use, by its name. */
export const FACTS: Record<Relation, ReadonlyMap<string, DeclaredFact>> = Object.fromEntries(
  (Object.keys(PARTICIPANTS) as Relation[]).map((relation) => [relation, declared(relation)]),
) as unknown as Record<Relation, ReadonlyMap<string, DeclaredFact>>;
