import { and, desc, eq, isNotNull, isNull } from 'drizzle-orm';
import type { KitDifference } from '@/lib/caseLife/check';
import type { LifeStage } from '@/lib/caseLife/life';
import { may } from '@/lib/people/permissions';
import { mayRead, type Reading, THE_PROGRAM } from '../../reader';
import { items, kitChecks, people, sets } from '../../schema';
import { pickedOf } from './blind';
import { type CheckEntry, checkEntriesOf, seenIn } from './checkOf';
import { kitOnRecord } from './standing';

export interface CheckScreen {
  stage: LifeStage;
  /** The reader picked for this kit: another person checks it. */
  ownKit: boolean;
  open: {
    id: string;
    entries: CheckEntry[];
    seen: { entryId: string; name: string; quantity: number; at: string }[];
  } | null;
  /** The last check closed since the kit was picked as it is now; shown afterwards, never before. */
  last: { by: string; at: string; differences: (KitDifference & { name: string })[] } | null;
}

/** The second person's check of a kit, as far as the reader may see it; `null` when there is no such case. */
export async function checkScreen(db: Reading, caseId: string): Promise<CheckScreen | null> {
  mayRead(db, 'readHospital');
  const { read, reader } = db;
  const kit = await kitOnRecord(read, caseId);
  if (!kit) return null;
  const me = reader === THE_PROGRAM ? '' : reader.id;
  const since = kit.life?.pickedAt ?? '';
  const [[own], [closed]] = await Promise.all([
    read
      .select()
      .from(kitChecks)
      .where(
        and(
          eq(kitChecks.caseId, caseId),
          eq(kitChecks.personId, me),
          isNull(kitChecks.closedAt),
          isNull(kitChecks.abandonedAt),
        ),
      ),
    read
      .select({ check: kitChecks, by: people.name })
      .from(kitChecks)
      .innerJoin(people, eq(people.id, kitChecks.personId))
      .where(and(eq(kitChecks.caseId, caseId), isNotNull(kitChecks.closedAt)))
      .orderBy(desc(kitChecks.closedAt))
      .limit(1),
  ]);
  const open = own && kit.stage === 'picked' && own.beganAt >= since ? own : null;
  const entries = open ? await checkEntriesOf(read, open.id) : [];
  // whoever has a check open has not seen what an earlier one said
  // whoever may still check blind has not seen what another's check said
  const sees =
    reader === THE_PROGRAM ||
    closed?.check.personId === me ||
    pickedOf(kit, me) ||
    kit.stage !== 'picked' ||
    !may({ role: reader.role }, 'checkKit');
  const last = closed && sees && closed.check.beganAt >= since && since !== '' && !open ? closed : null;
  const differences = (last?.check.differences ?? []) as KitDifference[];
  return {
    stage: kit.stage,
    ownKit: pickedOf(kit, me),
    open: open && {
      id: open.id,
      entries,
      seen: (await seenIn(read, entries)).map(({ entryId, thing, quantity, at }) => ({
        entryId,
        name: nameOf(thing),
        quantity,
        at,
      })),
    },
    last: last && {
      by: last.by,
      at: last.check.closedAt ?? '',
      differences: await Promise.all(
        differences.map(async (one) => ({ ...one, name: await nameOfKey({ read }, one.key) })),
      ),
    },
  };
}

function nameOf(thing: Awaited<ReturnType<typeof seenIn>>[number]['thing']): string {
  switch (thing.kind) {
    case 'set':
      return thing.set.code;
    case 'pack':
      return thing.heap.lot === null ? thing.item.name : `${thing.item.name}, lot ${thing.heap.lot}`;
    case 'unknown':
      return 'name' in thing ? thing.name : '';
  }
}

/** What a key of a difference names: a set, or an item with its lot. */
async function nameOfKey({ read }: Pick<Reading, 'read'>, key: string): Promise<string> {
  if (key.startsWith('set_')) {
    const [set] = await read.select({ code: sets.code }).from(sets).where(eq(sets.id, key));
    return set?.code ?? key;
  }
  const [itemId = '', lot = ''] = key.split(' lot ');
  const [item] = await read.select({ name: items.name }).from(items).where(eq(items.id, itemId));
  return lot === '' ? (item?.name ?? itemId) : `${item?.name ?? itemId}, lot ${lot}`;
}
