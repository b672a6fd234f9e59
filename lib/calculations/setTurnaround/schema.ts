import { z } from 'zod';
import { urgency } from '@/lib/theatre/surgicalCase';

/** Those of a large hospital; how much may be asked of them at once is another matter (extent.ts). */
const MOST_SETS = 10_000;
const MOST_CONFIGURATIONS = 2_000;
const MOST_POUCHES = 10_000;

const name = z.string().trim().min(1).max(80);
const instantMs = z.number().int().min(0).max(8_640_000_000_000);
const minutes = z.number().int().min(0).max(20_000);

const ready = z.strictObject({
  p50AtMs: instantMs.meta({ title: 'Half of the time by', description: 'ms since 1970' }),
  p90AtMs: instantMs.meta({ title: 'Nine times in ten by', description: 'ms since 1970' }),
});

const part = z.strictObject({
  sets: z.array(name).max(MOST_SETS).default([]),
  configurations: z
    .array(name)
    .max(20)
    .default([])
    .meta({ title: 'Configurations', description: 'Any of their sets serves' }),
});

const way = z.strictObject({
  parts: z.array(part).min(1).max(8).meta({ title: 'Parts', description: 'One set for each, no set twice' }),
  pouches: z.array(name).max(20).default([]).meta({ title: 'Pouches', description: 'One piece of each' }),
  penalty: z
    .number()
    .int()
    .min(0)
    .max(100)
    .default(0)
    .meta({ title: 'Penalty', description: 'What makes it less welcome than another way' }),
});

export const setTurnaroundInput = z.strictObject({
  cases: z
    .array(
      z.strictObject({
        case: name,
        startAtMs: instantMs,
        endAtMs: instantMs,
        leadMinutes: z
          .number()
          .int()
          .min(0)
          .max(1_440)
          .default(60)
          .meta({ title: 'Lead', description: 'Its sets must stand in theatre so long before it starts' }),
        urgency: urgency.default('booked'),
        theatre: name.nullable().default(null).meta({ title: 'Theatre' }),
        ways: z
          .array(way)
          .min(1)
          .max(12)
          .meta({ title: 'Ways', description: 'Any one of them serves the case' }),
      }),
    )
    .min(1)
    .max(1_000)
    .meta({ title: 'Cases' }),
  configurations: z
    .array(
      z.strictObject({
        configuration: name,
        stages: z
          .array(z.strictObject({ stage: name, p50Minutes: minutes, p90Minutes: minutes }))
          .min(1)
          .max(12)
          .meta({ title: 'Stages of a turn', description: 'From the end of a case to the sterile store' }),
      }),
    )
    .min(1)
    .max(MOST_CONFIGURATIONS)
    .meta({ title: 'Configurations' }),
  sets: z
    .array(
      z.strictObject({
        set: name,
        configuration: name,
        ready: ready.nullable().meta({
          title: 'Ready',
          description:
            'When it can first be taken; null where nobody can say: held, or waiting for a decision',
        }),
      }),
    )
    .max(MOST_SETS)
    .meta({ title: 'Sets' }),
  pouches: z
    .array(z.strictObject({ pouch: name, quantity: z.number().int().min(0).max(999) }))
    .max(MOST_POUCHES)
    .default([])
    .meta({ title: 'Pouches' }),
  promises: z
    .array(
      z.strictObject({
        case: name,
        set: name,
        moveCost: z
          .number()
          .int()
          .min(0)
          .max(100)
          .default(1)
          .meta({ title: 'Cost of moving it', description: 'Beside other promises' }),
        fixed: z
          .boolean()
          .default(false)
          .meta({ title: 'Fixed', description: 'Kept before any case is served by its set' }),
      }),
    )
    .max(4_000)
    .default([])
    .meta({ title: 'Promises as they stand' }),
  planBy: z
    .enum(['p50', 'p90'])
    .default('p90')
    .meta({ title: 'Plan by', description: 'The time a set makes half of the time, or nine times in ten' }),
  wantedMarginMinutes: z.number().int().min(0).max(1_440).default(0).meta({
    title: 'Wanted margin',
    description: 'Between ready, nine times in ten, and needed; less is a risk',
  }),
  stagesVary: z.enum(['independently', 'together']).default('independently').meta({
    title: 'Stages vary',
    description: 'Each by itself, or all long together',
  }),
  repairsFor: z.array(name).max(40).nullable().default(null).meta({
    title: 'Repairs for',
    description: 'null: the five most urgent cases that are served by nothing',
  }),
  elsewhere: z
    .strictObject({
      borrowedReadyAtMs: instantMs.nullable(),
      loanReadyAtMs: instantMs.nullable(),
    })
    .default({ borrowedReadyAtMs: null, loanReadyAtMs: null })
    .meta({
      title: 'From elsewhere',
      description: 'When a borrowed set, or one on loan, could be in the sterile store; null: not known',
    }),
  timeLimitMs: z.number().int().min(100).max(60_000).default(8_000).meta({ title: 'Time limit' }),
});

export type SetTurnaroundInput = z.output<typeof setTurnaroundInput>;
