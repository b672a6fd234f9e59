import { eq, inArray } from 'drizzle-orm';
import { z } from 'zod';
import { type LoadState, loadState } from '@/lib/loads/load';
import type { FailureOf, PackFate } from '@/lib/loads/touched';
import type { Queries } from '../../client';
import { mayRead, type Reading } from '../../reader';
import { cases, ledger, loads, packsInDoubt, people, sterilisers } from '../../schema';
import { packsInLoads } from './fates';

export interface DoubtedPack {
  packId: string;
  number: string;
  name: string;
  setId: string | null;
  kind: 'set' | 'pouch';
  loadId: string;
  fateThen: PackFate;
  fateNow: PackFate;
  heldNow: boolean;
  mayBeLifted: boolean;
  /** Cases it went to, as far as that is on record. */
  cases: { id: string; reference: string; date: string }[];
}

/** What a failed load put in doubt: as it was found then, and as it is now. */
export interface FailedLoad {
  id: string;
  number: string;
  steriliser: string;
  decidedAt: string;
  decidedBy: string;
  reason: string;
  of: FailureOf;
  since: { id: string; number: string } | null;
  until: { id: string; number: string } | null;
  loads: { id: string; number: string; state: LoadState; startedAt: string }[];
  packs: DoubtedPack[];
}

const failure = z.object({
  of: z.enum(['biological', 'other']),
  sinceLoadId: z.string().nullable(),
  untilLoadId: z.string().nullable(),
});

export async function findFailedLoad(db: Reading, id: string): Promise<FailedLoad | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [row] = await read
    .select({ load: loads, steriliser: sterilisers.name, by: people.name })
    .from(loads)
    .innerJoin(sterilisers, eq(sterilisers.id, loads.steriliserId))
    .leftJoin(people, eq(people.id, loads.decidedBy))
    .where(eq(loads.id, id));
  if (row?.load.state !== 'rejected' || row.load.decidedAt === null) return null;
  const kept = await read.select().from(packsInDoubt).where(eq(packsInDoubt.failedLoadId, id));
  // one from before this was kept says nothing of others: only what was in it is named
  const said = failure.safeParse(row.load.failure);
  const { of, sinceLoadId, untilLoadId } = said.success
    ? said.data
    : { of: 'other' as const, sinceLoadId: null, untilLoadId: null };
  const named = [...new Set([id, sinceLoadId, untilLoadId, ...kept.map(({ loadId }) => loadId)])].filter(
    (one): one is string => one !== null,
  );
  const rows = await read.select().from(loads).where(inArray(loads.id, named));
  const numberOf = (loadId: string | null) => {
    const found = rows.find((one) => one.id === loadId);
    return found ? { id: found.id, number: found.number } : null;
  };
  const inDoubt = rows
    .filter((one) => one.id === id || kept.some(({ loadId }) => loadId === one.id))
    .sort((a, b) => (a.startedAt ?? '').localeCompare(b.startedAt ?? ''));
  const now = await packsInLoads(
    read,
    inDoubt.map((one) => one.id),
  );
  const outings = await casesOf(
    read,
    now.flatMap(({ set }) => set?.id ?? []),
  );
  return {
    id,
    number: row.load.number,
    steriliser: row.steriliser,
    decidedAt: row.load.decidedAt,
    decidedBy: row.by ?? 'somebody',
    reason: row.load.reason ?? '',
    of,
    since: numberOf(sinceLoadId),
    until: numberOf(untilLoadId),
    loads: inDoubt.map((one) => ({
      id: one.id,
      number: one.number,
      state: loadState.parse(one.state),
      startedAt: one.startedAt ?? '',
    })),
    packs: now.flatMap((pack): DoubtedPack[] => {
      const then = kept.find((one) => one.packId === pack.packId && one.loadId === pack.loadId);
      if (!then && kept.length > 0) return [];
      const fateThen = (then?.fateThen as PackFate | undefined) ?? pack.fate;
      return [
        {
          packId: pack.packId,
          number: pack.number,
          name: pack.name,
          setId: pack.set?.id ?? null,
          kind: pack.kind,
          loadId: pack.loadId,
          fateThen,
          fateNow: pack.fate,
          heldNow: pack.fate === 'heldAlready',
          mayBeLifted: pack.kind === 'pouch' && pack.stock?.heldBecause === 'loadUnknown',
          cases: outings.get(pack.packId) ?? [],
        },
      ];
    }),
  };
}

const outing = z.looseObject({ caseId: z.string(), packId: z.string().nullable().optional() });

/** The cases each pack was sent to, from what was recorded when its set was sent. */
async function casesOf(
  read: Queries,
  setIds: readonly string[],
): Promise<Map<string, { id: string; reference: string; date: string }[]>> {
  const found = new Map<string, { id: string; reference: string; date: string }[]>();
  if (setIds.length === 0) return found;
  const sent = await read
    .select()
    .from(ledger)
    .where(inArray(ledger.subjectId, [...new Set(setIds)]));
  const outings = sent.flatMap(({ action, detail }) => {
    const parsed = outing.safeParse(detail);
    return action === 'send-to-theatre' && parsed.success && parsed.data.packId
      ? [{ caseId: parsed.data.caseId, packId: parsed.data.packId }]
      : [];
  });
  if (outings.length === 0) return found;
  const booked = await read
    .select()
    .from(cases)
    .where(
      inArray(
        cases.id,
        outings.map(({ caseId }) => caseId),
      ),
    );
  for (const { caseId, packId } of outings) {
    const one = booked.find(({ id }) => id === caseId);
    if (one)
      found.set(packId, [
        ...(found.get(packId) ?? []),
        { id: one.id, reference: one.reference, date: one.caseDate },
      ]);
  }
  return found;
}
