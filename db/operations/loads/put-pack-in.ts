import { and, eq, max, sql } from 'drizzle-orm';
import type { PackId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { packState } from '@/lib/loads/load';
import { turnStep } from '@/lib/sets/setState';
import { loadWords as words } from '@/lib/wording/loads';
import { stepWords } from '@/lib/wording/sets';
import type { Queries } from '../../client';
import { items, labelPrints, loadPacks, loads, packs, sets } from '../../schema';
import {
  atLoad,
  changeLoad,
  type LoadNow,
  type LoadRequest,
  type LoadRow,
  standingInTheWay,
} from './at-load';

interface PutPackIn extends LoadRequest {
  packId: PackId;
  /** Copy of the label that was scanned; `null` where the pack was named in another way. */
  copy: number | null;
}

/**
 * Puts a closed pack into a load that is being made up. Scanned twice it is in it once. What stands in the way is said at
 * once: an old label, a set that is held or was packed anew, a pack that lies in another load.
 */
export async function putPackIn(
  request: PutPackIn,
): Promise<Outcome<{ revision: number; name: string }, LoadNow>> {
  const { person, now, packId, copy } = request;
  const acting = { act: 'makeUpLoad', verb: 'put packs into it', while: ['makingUp'] } as const;
  return atLoad(request, acting, async (write, load) => {
    const [row] = await write
      .select({ pack: packs, set: sets, itemName: items.name })
      .from(packs)
      .leftJoin(sets, eq(sets.id, packs.setId))
      .leftJoin(items, eq(items.id, packs.itemId))
      .where(eq(packs.id, packId));
    if (!row) return refused('notFound', words.noSuchPack);
    const name = row.set?.code ?? row.itemName ?? row.pack.number;
    const [lies] = await write
      .select({ packId: loadPacks.packId })
      .from(loadPacks)
      .where(and(eq(loadPacks.loadId, load.id), eq(loadPacks.packId, packId)));
    if (lies) return { ok: true, value: { revision: load.revision, name } };
    const problems = await inTheWay(write, load, { ...row, name, copy });
    if (problems.length > 0) return standingInTheWay(problems);
    await write.insert(loadPacks).values({ loadId: load.id, packId, putInBy: person.id, putInAt: now });
    await write
      .update(packs)
      .set({ state: 'inLoad', loadId: load.id, revision: sql`${packs.revision} + 1` })
      .where(eq(packs.id, packId));
    const changed = await changeLoad(
      write,
      load,
      {},
      {
        action: 'put-pack-in',
        person,
        now,
        detail: { packId, packNumber: row.pack.number, copy },
      },
    );
    return { ok: true, value: { ...changed, name } };
  });
}

interface Candidate {
  pack: typeof packs.$inferSelect;
  set: typeof sets.$inferSelect | null;
  name: string;
  copy: number | null;
}

async function inTheWay(
  write: Queries,
  load: LoadRow,
  { pack, set, name, copy }: Candidate,
): Promise<Problem[]> {
  const problems: Problem[] = [];
  const say = (code: string, message: string) => problems.push({ path: ['packId'], code, message });
  if (pack.state === 'inLoad' && pack.loadId !== null && pack.loadId !== load.id) {
    const [other] = await write.select({ number: loads.number }).from(loads).where(eq(loads.id, pack.loadId));
    say('in-other-load', words.inOtherLoad(name, other?.number ?? pack.loadId));
  } else if (pack.state !== 'closed')
    say('not-closed', words.packNotClosed(name, packState.parse(pack.state)));
  if (set !== null) {
    if (set.packId !== pack.id) say('other-pack', words.otherPack(set.code));
    else if (turnStep.parse(set.step) !== 'packed')
      say('not-packed', words.setNotPacked(set.code, stepWords(turnStep.parse(set.step), set.heldBecause)));
  }
  const [last] = await write
    .select({ copy: max(labelPrints.copy) })
    .from(labelPrints)
    .where(eq(labelPrints.packId, pack.id));
  if (copy !== null && last?.copy != null && copy < last.copy)
    say('old-label', words.oldCopy(name, copy, last.copy));
  return problems;
}
