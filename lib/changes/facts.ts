import { z } from 'zod';

/** One thing that is so: what it is about, said alike before and after, and what is so. */
export interface Fact {
  about: string;
  say: string;
}

/** What differs about one thing; `null` where nothing was, or would be, said of it. */
export const factChange = z.object({
  about: z.string(),
  before: z.string().nullable(),
  after: z.string().nullable(),
});
export type FactChange = z.infer<typeof factChange>;

/**
 * What differs between two lists of facts, in the order in which things are first spoken of. Several facts about one
 * thing are compared as a set, so that neither their order nor a fact said twice is a change.
 */
export function compareFacts(before: readonly Fact[], after: readonly Fact[]): FactChange[] {
  const [was, is] = [byAbout(before), byAbout(after)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((about): FactChange[] => {
    const [old, fresh] = [was.get(about) ?? new Set<string>(), is.get(about) ?? new Set<string>()];
    const gone = [...old].filter((say) => !fresh.has(say));
    const added = [...fresh].filter((say) => !old.has(say));
    return gone.length + added.length === 0 ? [] : [{ about, before: said(gone), after: said(added) }];
  });
}

function byAbout(facts: readonly Fact[]): Map<string, Set<string>> {
  const grouped = new Map<string, Set<string>>();
  for (const { about, say } of facts) grouped.set(about, (grouped.get(about) ?? new Set()).add(say));
  return grouped;
}

const said = (says: readonly string[]) => (says.length === 0 ? null : says.join('; '));
