import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { coverLinesWords } from '@/lib/wording/kit-calculations';
import { checkTree } from '../fewestTrays/schema';

const name = z.string().trim().min(1).max(80);

const held = z
  .array(
    z.strictObject({
      item: name,
      pieces: z.number().int().min(0).max(999).meta({ title: 'Sound pieces' }),
      unsound: z.number().int().min(0).max(999).default(0).meta({
        title: 'Pieces not sound',
        description: 'Bent, blunt, worn: there, and counted for nothing',
      }),
    }),
  )
  .max(600);

const pair = z.strictObject({
  first: name,
  second: name,
  outcome: z.enum(['fits', 'doesNotFit', 'notEstablished']).meta({ title: 'Answer of the fit rules' }),
  reason: z.string().max(300).nullable().default(null).meta({ title: 'Why, where they do not' }),
});

export const buildableInput = z.strictObject({
  steps: z
    .array(
      z.strictObject({
        step: name,
        /** Items any one of which is implanted in this step; `null` where nothing is. */
        piece: z.array(name).min(1).max(40).nullable().default(null).meta({ title: 'Pieces accepted' }),
        chains: z.array(name).max(12).default([]).meta({ title: 'Chains the step needs' }),
      }),
    )
    .min(1)
    .max(120)
    .meta({ title: 'Steps of the construct' }),
  chains: z
    .array(
      z.strictObject({
        chain: name,
        slots: z
          .array(
            z.strictObject({
              slot: name,
              items: z.array(name).max(120).meta({ title: 'Items that suit the screw and the hole' }),
            }),
          )
          .min(1)
          .max(8),
        links: z
          .array(
            z.strictObject({
              slots: z.tuple([z.number().int().min(0), z.number().int().min(0)]),
              pairs: z
                .array(pair)
                .max(800)
                .meta({ title: 'Answers', description: 'A pair that is not named does not fit' }),
            }),
          )
          .max(8)
          .default([]),
      }),
    )
    .max(60)
    .default([])
    .meta({ title: 'Instrument chains' }),
  contents: held.meta({ title: 'Contents of the set' }),
  pouches: held.default([]).meta({ title: 'Sterile pouches and packs beside it' }),
});

const blocked = z.strictObject({
  kind: z.enum(['piece', 'chain']),
  /** The chain's name, or the step whose piece is short. */
  name: z.string(),
  steps: z.array(z.string()),
  /** Smallest additions, each of which would do. */
  wouldDo: z.array(z.array(z.string())),
  /** Why what is there does not do. */
  reasons: z.array(z.string()),
  sentence: z.string(),
});

export const buildableOutput = z.strictObject({
  buildable: z.enum(['yes', 'no', 'onlyWith']),
  steps: z.number().int(),
  stepsPossible: z.number().int(),
  /** Pouches without which it could not be built. */
  onlyWith: z.array(z.strictObject({ item: z.string(), pieces: z.number().int() })),
  blocked: z.array(blocked),
  /** One piece whose loss stops these steps. */
  singlePoints: z.array(z.strictObject({ item: z.string(), steps: z.array(z.string()) })),
  /** Pieces that could be lost, whichever they are, before the step is stopped; 3 is three or more. */
  margins: z.array(z.strictObject({ step: z.string(), spare: z.number().int() })),
});

export type BuildableInput = z.output<typeof buildableInput>;
export type BuildableOutput = z.output<typeof buildableOutput>;

/** Names given twice, chains that are not there, and links that make a ring. */
export function checkBuildable({ steps, chains }: BuildableInput): Problem[] {
  const problems: Problem[] = [];
  const twice = (names: string[], list: string, key: string) => {
    names.forEach((given, at) => {
      if (names.indexOf(given) !== at)
        problems.push({
          path: [list, at, key],
          code: 'duplicate',
          message: coverLinesWords.duplicate(given),
        });
    });
  };
  const known = chains.map(({ chain }) => chain);
  twice(
    steps.map(({ step }) => step),
    'steps',
    'step',
  );
  twice(known, 'chains', 'chain');
  steps.forEach((step, at) => {
    step.chains.forEach((chain, chainAt) => {
      if (known.includes(chain)) return;
      problems.push({
        path: ['steps', at, 'chains', chainAt],
        code: 'no-such-chain',
        message: coverLinesWords.noSuchChain(chain),
      });
    });
  });
  chains.forEach((chain, at) => {
    problems.push(...checkTree(chain, ['chains', at]));
  });
  return problems;
}
