import { and, desc, eq, gt, isNotNull } from 'drizzle-orm';
import type { AsidePieces } from '@/lib/bench/state';
import type { NotFoundStep } from '@/lib/pieces/move';
import type { Queries } from '../../client';
import { casePicks, counts, slotHoldings } from '../../schema';
import { type Move, recordMoves } from './record-moves';

/** What a closed count says of one line. */
export interface CountedLine {
  lineId: string;
  itemId: string;
  /** Fit pieces in the slot after it; `null` where nobody has counted it. */
  held: number | null;
  aside: readonly AsidePieces[];
  takenHome: number;
}

interface CountMoves {
  setId: string;
  countId: string;
  lines: readonly CountedLine[];
  personId: string;
  now: string;
}

const BENCH: NotFoundStep = 'bench';

/**
 * Makes the journal of a set's slots agree with a count of them: what was put aside and taken home leaves its slot, and
 * what is left over is found or not found. Pieces not found after a case carry that case: it is where the set was since it
 * was counted last, not a claim that they were implanted there.
 */
export async function moveByCount(
  write: Queries,
  { setId, countId, lines, personId, now }: CountMoves,
): Promise<void> {
  const holdings = await write.select().from(slotHoldings).where(eq(slotHoldings.setId, setId));
  const heldOf = new Map(holdings.map(({ lineId, quantity }) => [lineId, quantity]));
  let caseSince: string | null | undefined;
  const moves: Move[] = [];
  for (const { lineId, itemId, held, aside, takenHome } of lines) {
    const before = heldOf.get(lineId) ?? 0;
    const out = takenHome + aside.reduce((sum, { pieces }) => sum + pieces, 0);
    // of a line nobody counted only what was moved is known
    const more = held === null ? Math.max(0, out - before) : held + out - before;
    const base = {
      itemId,
      lot: null,
      useBy: null,
      source: countId,
      personId,
      doneAt: now,
      enteredAt: now,
    };
    const slot = { setId, lineId };
    if (more > 0)
      moves.push({ ...base, act: heldOf.has(lineId) ? 'found' : 'opening', quantity: more, to: slot });
    for (const { condition, pieces } of aside)
      moves.push({ ...base, act: 'setAside', quantity: pieces, from: slot, reason: condition });
    moves.push({ ...base, act: 'takenOut', quantity: takenHome, from: slot });
    if (more < 0) {
      caseSince ??= await caseSinceCounted(write, setId, countId);
      moves.push({
        ...base,
        act: 'notFound',
        quantity: -more,
        from: slot,
        reason: BENCH,
        caseId: caseSince,
      });
    }
    if (held === 0 && !heldOf.has(lineId))
      await write.insert(slotHoldings).values({ setId, lineId, quantity: 0 }).onConflictDoNothing();
  }
  await recordMoves(write, moves);
}

/** The case a set was in since it was counted last; `null` where it was in none, or was counted after it. */
async function caseSinceCounted(write: Queries, setId: string, countId: string): Promise<string | null> {
  const [last] = await write
    .select({ caseId: casePicks.caseId, issuedAt: casePicks.issuedAt })
    .from(casePicks)
    .where(and(eq(casePicks.setId, setId), isNotNull(casePicks.issuedAt)))
    .orderBy(desc(casePicks.issuedAt))
    .limit(1);
  if (!last?.issuedAt) return null;
  const since = await write
    .select({ id: counts.id })
    .from(counts)
    .where(and(eq(counts.setId, setId), gt(counts.countedAt, last.issuedAt)));
  return since.every(({ id }) => id === countId) ? last.caseId : null;
}

/** Lines of a set that follow another version now: what lay in a slot lies there still, under the name of its new line. */
export async function carrySlots(
  write: Queries,
  {
    setId,
    lines,
    personId,
    now,
  }: {
    setId: string;
    /** Of each line of the old version: the line it is now, or none. */
    lines: readonly { itemId: string; from: string; to: string | null }[];
    personId: string;
    now: string;
  },
): Promise<void> {
  const holdings = await write.select().from(slotHoldings).where(eq(slotHoldings.setId, setId));
  const heldOf = new Map(holdings.map(({ lineId, quantity }) => [lineId, quantity]));
  await recordMoves(
    write,
    lines.map(({ itemId, from, to }) => ({
      ...(to === null
        ? { act: 'takenOut' as const, reason: 'noLine' }
        : { act: 'carried' as const, to: { setId, lineId: to } }),
      itemId,
      lot: null,
      useBy: null,
      quantity: heldOf.get(from) ?? 0,
      from: { setId, lineId: from },
      personId,
      doneAt: now,
      enteredAt: now,
    })),
  );
}
