import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { coverLinesWords } from '@/lib/wording/kit-calculations';

const name = z.string().trim().min(1).max(80);
const count = z.number().int().min(1).max(999);

/** An item of this name is always at hand: a driver with a fixed handle needs no handle. */
export const NOTHING_NEEDED = 'nothing needed';

const slot = z.strictObject({
  items: z
    .array(name)
    .max(120)
    .meta({
      title: 'Items',
      description: `Any of them fills the slot; “${NOTHING_NEEDED}” is always at hand`,
    }),
  pieces: z.number().int().min(1).max(20).default(1).meta({ title: 'Pieces of the chosen item' }),
});

const link = z.strictObject({
  slots: z
    .tuple([z.number().int().min(0), z.number().int().min(0)])
    .meta({ title: 'Slots', description: 'Counted from 0' }),
  pairs: z
    .array(z.tuple([name, name]))
    .max(600)
    .meta({ title: 'Pairs that fit each other' }),
});

/** What a line asks for. */
export const lineNeed = z.discriminatedUnion('kind', [
  z
    .strictObject({ kind: z.literal('anyOf'), items: z.array(name).max(200) })
    .meta({ title: 'Any one of these' }),
  z
    .strictObject({ kind: z.literal('pieces'), items: z.array(name).max(200), quantity: count })
    .meta({ title: 'Pieces that are used up', description: 'Lines compete for them' }),
  z
    .strictObject({
      kind: z.literal('chain'),
      slots: z.array(slot).min(1).max(8),
      links: z.array(link).max(8),
    })
    .meta({ title: 'A chain whose links fit each other', description: 'Slots and links form a tree' }),
]);

export const fewestTraysInput = z.strictObject({
  lines: z
    .array(
      z.strictObject({
        line: name,
        importance: z.enum(['mustHave', 'backUp']).default('mustHave').meta({ title: 'Importance' }),
        need: lineNeed.meta({ title: 'Need' }),
      }),
    )
    .min(1)
    .max(200)
    .meta({ title: 'Requirement lines' }),
  sets: z
    .array(
      z.strictObject({
        set: name,
        holds: z.array(z.strictObject({ item: name, pieces: count })).max(400),
        promised: z.boolean().default(false).meta({ title: 'Promised to another case' }),
        useByDays: z.number().int().min(0).max(3650).nullable().default(null).meta({
          title: 'Days to use-by',
          description: 'From the case date; null for none',
        }),
        massGrams: z.number().int().min(0).max(50_000).nullable().default(null).meta({ title: 'Mass' }),
        metres: z.number().int().min(0).max(1000).default(0).meta({ title: 'Walk' }),
      }),
    )
    .max(300)
    .meta({ title: 'Sets that can be opened' }),
  packs: z
    .array(
      z.strictObject({
        pack: name,
        item: name,
        quantity: count,
        useByDays: z.number().int().min(0).max(3650).nullable().default(null),
        metres: z.number().int().min(0).max(1000).default(0),
      }),
    )
    .max(1000)
    .default([])
    .meta({ title: 'Pouches and sterile packs' }),
  timeLimitMs: z.number().int().min(50).max(10_000).default(1500).meta({ title: 'Time limit' }),
});

const kitShape = {
  sets: z.array(z.string()),
  packs: z.array(z.strictObject({ pack: z.string(), item: z.string(), quantity: z.number().int() })),
};

export const fewestTraysOutput = z.strictObject({
  trays: z.number().int(),
  singlePacks: z.number().int(),
  ...kitShape,
  /** Lines that stay short whatever is opened. */
  short: z.array(
    z.strictObject({
      line: z.string(),
      importance: z.enum(['mustHave', 'backUp']),
      missingPieces: z.number().int(),
    }),
  ),
  /** Other kits with as few trays and packs. */
  ties: z.array(z.strictObject(kitShape)),
  /** Per set: the lines that would be short with it left closed, whatever packs are fetched. */
  whyNotFewer: z.array(z.strictObject({ set: z.string(), missing: z.array(z.string()) })),
  proof: z.discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('optimal'),
      by: z.enum(['search', 'programme']),
      /** Whether every further aim is proven too, or the best of many looked at. */
      furtherAims: z.enum(['proven', 'bestFound']),
    }),
    z.strictObject({ kind: z.literal('gap'), lowerBoundTrays: z.number().int(), gap: z.number() }),
  ]),
  /** What the rule of thumb "the tray that helps most next" would have opened. */
  greedyTrays: z.number().int(),
});

export type FewestTraysInput = z.output<typeof fewestTraysInput>;
export type FewestTraysOutput = z.output<typeof fewestTraysOutput>;

/** Names given twice, and links that name no slot or make a ring. */
export function checkFewestTrays(input: FewestTraysInput): Problem[] {
  const problems: Problem[] = [];
  for (const [list, key] of [
    ['lines', 'line'],
    ['sets', 'set'],
    ['packs', 'pack'],
  ] as const) {
    const seen = new Set<string>();
    input[list].forEach((entry, at) => {
      const given = (entry as unknown as Record<string, string>)[key] as string;
      if (seen.has(given))
        problems.push({
          path: [list, at, key],
          code: 'duplicate',
          message: coverLinesWords.duplicate(given),
        });
      seen.add(given);
    });
  }
  input.lines.forEach(({ need }, at) => {
    if (need.kind === 'chain') problems.push(...checkTree(need, ['lines', at, 'need']));
  });
  return problems;
}

/** Links must join slots that exist, and no ring of them: on a tree what is said here is exact. */
export function checkTree(
  { slots, links }: { slots: readonly unknown[]; links: readonly { slots: readonly [number, number] }[] },
  path: (string | number)[],
): Problem[] {
  const problems: Problem[] = [];
  const group = slots.map((_, at) => at);
  links.forEach(({ slots: [first, second] }, at) => {
    const here = [...path, 'links', at, 'slots'];
    const [a, b] = [group[first], group[second]];
    if (a === undefined || b === undefined || first === second) {
      problems.push({ path: here, code: 'no-such-slot', message: coverLinesWords.noSuchSlot(slots.length) });
    } else if (a === b) problems.push({ path: here, code: 'ring', message: coverLinesWords.ring });
    else
      group.forEach((one, slot) => {
        if (one === b) group[slot] = a;
      });
  });
  return problems;
}
