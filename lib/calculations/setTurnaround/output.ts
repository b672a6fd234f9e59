import { z } from 'zod';

const minutes = z.number().int();
const instantMs = z.number().int();

const service = {
  /** Which of its ways, counted from 0. */
  way: z.number().int(),
  /** One set for each part of that way. */
  sets: z.array(z.string()),
  pouches: z.array(z.string()),
};

/** What a repair takes from others. */
const cost = z.strictObject({
  unserved: z.array(z.string()),
  moved: z.array(z.strictObject({ case: z.string(), from: z.string(), to: z.array(z.string()) })),
});

const repair = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('otherSets'), ...service, cost }),
  z.strictObject({
    kind: z.literal('quickerTurn'),
    ...service,
    set: z.string(),
    /** The turn after this case; `null`: the one it is in now. */
    afterCase: z.string().nullable(),
    byMinutes: minutes,
    /** When it must be in the sterile store. */
    readyByMs: instantMs,
    /** Whether half of all turns are as quick. */
    halfTheTime: z.boolean(),
    cost,
  }),
  z.strictObject({
    kind: z.literal('changeOrder'),
    ...service,
    withCase: z.string(),
    startAtMs: instantMs,
    otherStartAtMs: instantMs,
    cost,
  }),
  z.strictObject({
    kind: z.literal('laterSlot'),
    ...service,
    startAtMs: instantMs,
    slipMinutes: minutes,
    cost,
  }),
  z.strictObject({
    kind: z.enum(['borrow', 'loan']),
    way: z.number().int(),
    /** For each part that has no set: which sets are meant. */
    missing: z.array(z.string()),
    neededByMs: instantMs,
    untilMs: instantMs,
    inTime: z.enum(['yes', 'no', 'notEstablished']),
    cost,
  }),
]);

const obstacle = z.strictObject({
  set: z.string(),
  kind: z.enum(['readyUnknown', 'notReady', 'inUse', 'neededNext', 'noPouch', 'onlyThis']),
  /** The case that has it, or needs it next. */
  byCase: z.string().nullable(),
  /** Ready, free again, or needed at. */
  atMs: instantMs.nullable(),
  pouch: z.string().nullable(),
  /** By how much it misses: late, or in the way of the next. */
  missesMinutes: minutes.nullable(),
});

export const setTurnaroundOutput = z.strictObject({
  /** Per configuration, or configurations that stand in for each other: as many as cases overlap at the most. */
  copies: z.array(
    z.strictObject({
      configurations: z.array(z.string()),
      needed: z.number().int(),
      present: z.number().int(),
      /** Where they overlap so; `null` where nothing is needed. */
      fromMs: instantMs.nullable(),
      toMs: instantMs.nullable(),
      cases: z.array(z.string()),
    }),
  ),
  served: z.number().int(),
  of: z.number().int(),
  assignments: z.array(
    z.strictObject({
      case: z.string(),
      needByMs: instantMs,
      way: z.number().int(),
      sets: z.array(
        z.strictObject({
          set: z.string(),
          /** The case it comes back from; `null` where it has served none yet. */
          afterCase: z.string().nullable(),
          readyAtMs: instantMs,
          marginMinutes: minutes,
          inTime: z.enum(['nineInTen', 'halfTheTime']),
          backAtMs: instantMs,
        }),
      ),
      pouches: z.array(z.string()),
    }),
  ),
  unserved: z.array(
    z.strictObject({
      case: z.string(),
      needByMs: instantMs,
      ways: z.array(z.strictObject({ way: z.number().int(), obstacles: z.array(obstacle) })),
      /** The least it must slip for some sets to serve it, all else as planned; `null` where no slip helps. */
      slipMinutes: minutes.nullable(),
      startAtMs: instantMs.nullable(),
    }),
  ),
  /** Promises as they stood that overlap on a set. */
  clashes: z.array(
    z.strictObject({
      set: z.string(),
      cases: z.tuple([z.string(), z.string()]),
      fromMs: instantMs,
      toMs: instantMs,
    }),
  ),
  movedPromises: z.array(
    z.strictObject({
      case: z.string(),
      from: z.string(),
      to: z.array(z.string()),
      because: z.enum(['notReady', 'notSuitable', 'betterPlan']),
    }),
  ),
  /** If none were refused and each waited for the first sets it can have, in the order of need. */
  slipsInOrder: z.array(
    z.strictObject({ case: z.string(), slipMinutes: minutes.nullable(), sets: z.array(z.string()) }),
  ),
  repairs: z.array(z.strictObject({ case: z.string(), repairs: z.array(repair) })),
  aims: z.strictObject({
    fixedNotKept: z.number().int(),
    unservedNow: z.number().int(),
    unservedToday: z.number().int(),
    unservedSoon: z.number().int(),
    unservedBooked: z.number().int(),
    movedCost: z.number().int(),
    riskMinutes: minutes,
    penalty: z.number().int(),
  }),
  /** The rule of thumb beside it: in the order of need each takes what has been free longest. */
  earliestFree: z.strictObject({ served: z.number().int(), more: z.number().int() }),
  proof: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('optimal') }),
    z.strictObject({ kind: z.literal('gap'), servedAtMost: z.number().int() }),
  ]),
});

export type SetTurnaroundOutput = z.output<typeof setTurnaroundOutput>;
