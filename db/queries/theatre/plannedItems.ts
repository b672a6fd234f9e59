import { and, asc, inArray, ne } from 'drizzle-orm';
import { type CaseId, caseId, type ItemId } from '@/lib/identity/ids';
import { keptNeeds } from '@/lib/kits/keptWays';
import type { Needs } from '@/lib/kits/need';
import { groupBy } from '@/lib/lists/groupBy';
import type { PlannedItems } from '@/lib/theatre/report/facts';
import { planFromRow } from '../../mappers/plan';
import { mayRead, type Reading } from '../../reader';
import { plans } from '../../schema';
import { keptCatalogue } from '../caseKit';
import { loadFitEngine } from '../fitRules';

/** What the plan of each case takes and may take: its confirmed version, or its draft. A case without a plan is left out. */
export async function plannedItems(db: Reading, ids: readonly CaseId[]): Promise<PlannedItems[]> {
  mayRead(db, 'readHospital');
  if (ids.length === 0) return [];
  const [rows, catalogue, engine] = await Promise.all([
    db.read
      .select()
      .from(plans)
      .where(and(inArray(plans.caseId, [...ids]), ne(plans.status, 'superseded')))
      .orderBy(asc(plans.version)),
    keptCatalogue(db),
    loadFitEngine(db),
  ]);
  return [...groupBy(rows, (row) => row.caseId)].flatMap(([id, versions]) => {
    const plan = versions.find(({ status }) => status === 'confirmed') ?? versions[0];
    if (!plan) return [];
    const needs = keptNeeds(planFromRow(plan).construct, catalogue, engine);
    return [{ caseId: caseId.parse(id), implants: implantsOf(needs), serves: servesIn(needs) }];
  });
}

function implantsOf({ pieces }: Needs): PlannedItems['implants'] {
  const first = pieces.flatMap(({ what, accepts }) =>
    accepts[0] ? [{ what, itemId: accepts[0].itemId }] : [],
  );
  return [...groupBy(first, ({ itemId }) => itemId)].map(([itemId, group]) => ({
    itemId,
    what: group[0]?.what ?? 'screw',
    pieces: group.length,
  }));
}

function servesIn({ pieces, chains }: Needs): ReadonlySet<ItemId> {
  return new Set([
    ...pieces.flatMap(({ accepts }) => accepts.map(({ itemId }) => itemId)),
    ...chains.flatMap(({ slots }) =>
      slots.flatMap(({ candidates }) => candidates.flatMap(({ itemId }) => itemId ?? [])),
    ),
  ]);
}
