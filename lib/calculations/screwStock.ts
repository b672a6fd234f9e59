import { z } from 'zod';
import type { Problem } from '@/lib/identity/result';
import { duplicateName, noSuchFamily, tooManyLengths } from '@/lib/wording/calculations';

/** A screw length in millimetres, to the half. */
export const lengthMm = z
  .number()
  .positive()
  .max(200)
  .multipleOf(0.5, 'Lengths are made in steps of half a millimetre.')
  .meta({ title: 'Length' });

export const screwFamilies = z
  .array(
    z.strictObject({
      family: z.string().min(1).max(40).meta({ title: 'Screw family' }),
      lengths: z
        .array(
          z.strictObject({
            lengthMm,
            stock: z
              .number()
              .int()
              .min(0)
              .max(99)
              .nullable()
              .meta({ title: 'Pieces at hand', description: 'null where nobody has counted' }),
          }),
        )
        .min(1)
        .max(40)
        .meta({ title: 'Lengths made' }),
    }),
  )
  .min(1)
  .max(8)
  .meta({
    title: 'Screws',
    description: 'Each screw family with every length it is made in, and the pieces at hand',
  });

export type ScrewFamilies = z.output<typeof screwFamilies>;

export const holeName = z.string().min(1).max(20).meta({ title: 'Hole' });

/** Over all families; it bounds the work. */
const MOST_LENGTHS = 160;

/** Names that must be unique, and families that must exist. */
export function checkScrews(input: {
  families: ScrewFamilies;
  holes: readonly { hole: string; family: string }[];
}): Problem[] {
  const problems: Problem[] = [];
  const lengths = input.families.reduce((sum, family) => sum + family.lengths.length, 0);
  if (lengths > MOST_LENGTHS) {
    problems.push({
      path: ['families'],
      code: 'too-many-lengths',
      message: tooManyLengths(lengths, MOST_LENGTHS),
    });
  }
  const families = new Set<string>();
  for (const [at, { family, lengths }] of input.families.entries()) {
    if (families.has(family)) problems.push(duplicate(['families', at, 'family'], family));
    families.add(family);
    const seen = new Set<number>();
    for (const [lengthAt, { lengthMm: mm }] of lengths.entries()) {
      if (seen.has(mm))
        problems.push(duplicate(['families', at, 'lengths', lengthAt, 'lengthMm'], `${mm} mm`));
      seen.add(mm);
    }
  }
  const holes = new Set<string>();
  for (const [at, { hole, family }] of input.holes.entries()) {
    if (holes.has(hole)) problems.push(duplicate(['holes', at, 'hole'], hole));
    holes.add(hole);
    if (!families.has(family)) {
      problems.push({
        path: ['holes', at, 'family'],
        code: 'unknown-family',
        message: noSuchFamily(family, [...families]),
      });
    }
  }
  return problems;
}

function duplicate(path: (string | number)[], name: string): Problem {
  return { path, code: 'duplicate', message: duplicateName(name) };
}
