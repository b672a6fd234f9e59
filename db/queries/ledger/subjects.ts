import { inArray } from 'drizzle-orm';
import type { ListKind } from '@/lib/exchange/list';
import { LISTS } from '@/lib/exchange/lists/lists';
import type { Queries } from '../../client';
import {
  cases,
  configurations,
  imports,
  items,
  lenders,
  loads,
  loans,
  makers,
  packs,
  people,
  places,
  plans,
  reconciliations,
  restocks,
  scans,
  sets,
  sterilisers,
  supplyOrders,
  usageOrders,
} from '../../schema';

/** What an entry is about, and how people call it; `null` where it has no name of its own. */
export interface Subject {
  kind: string;
  id: string;
  label: string | null;
  /** The case of a plan, by which it is found. */
  caseId?: string;
}

/** What the subjects of some entries are called. One look for each kind that occurs. */
export async function subjectsOf(
  read: Queries,
  entries: readonly { subjectKind: string; subjectId: string }[],
): Promise<Map<string, Subject>> {
  const ids = (kind: string) => [
    ...new Set(entries.filter((one) => one.subjectKind === kind).map((one) => one.subjectId)),
  ];
  const found = new Map<string, Subject>();
  const add = (kind: string, rows: readonly { id: string; label: string; caseId?: string }[]) => {
    for (const row of rows) found.set(row.id, { kind, ...row });
  };
  for (const kind of new Set(entries.map((one) => one.subjectKind)))
    add(kind, await named(read, kind, ids(kind)));
  return found;
}

async function named(
  read: Queries,
  kind: string,
  ids: string[],
): Promise<{ id: string; label: string; caseId?: string }[]> {
  switch (kind) {
    case 'set':
      return read.select({ id: sets.id, label: sets.code }).from(sets).where(inArray(sets.id, ids));
    case 'case':
      return read.select({ id: cases.id, label: cases.reference }).from(cases).where(inArray(cases.id, ids));
    case 'plan': {
      const rows = await read
        .select({ id: plans.id, caseId: plans.caseId, version: plans.version })
        .from(plans)
        .where(inArray(plans.id, ids));
      const ofCases = await named(
        read,
        'case',
        rows.map(({ caseId }) => caseId),
      );
      const reference = new Map(ofCases.map(({ id, label }) => [id, label]));
      return rows.map(({ id, caseId, version }) => ({
        id,
        caseId,
        label: `${reference.get(caseId) ?? caseId}, version ${version}`,
      }));
    }
    case 'load':
      return read.select({ id: loads.id, label: loads.number }).from(loads).where(inArray(loads.id, ids));
    case 'pack':
      return read.select({ id: packs.id, label: packs.number }).from(packs).where(inArray(packs.id, ids));
    case 'scan':
      return read.select({ id: scans.id, label: scans.text }).from(scans).where(inArray(scans.id, ids));
    case 'item':
      return read.select({ id: items.id, label: items.code }).from(items).where(inArray(items.id, ids));
    case 'configuration':
      return read
        .select({ id: configurations.id, label: configurations.name })
        .from(configurations)
        .where(inArray(configurations.id, ids));
    case 'person':
      return read.select({ id: people.id, label: people.name }).from(people).where(inArray(people.id, ids));
    case 'place':
      return read.select({ id: places.id, label: places.name }).from(places).where(inArray(places.id, ids));
    case 'steriliser':
      return read
        .select({ id: sterilisers.id, label: sterilisers.name })
        .from(sterilisers)
        .where(inArray(sterilisers.id, ids));
    case 'loan':
      return read.select({ id: loans.id, label: loans.number }).from(loans).where(inArray(loans.id, ids));
    case 'lender':
      return read
        .select({ id: lenders.id, label: lenders.name })
        .from(lenders)
        .where(inArray(lenders.id, ids));
    case 'restock':
      return read
        .select({ id: restocks.id, label: restocks.number })
        .from(restocks)
        .where(inArray(restocks.id, ids));
    case 'order':
      return read
        .select({ id: supplyOrders.id, label: supplyOrders.number })
        .from(supplyOrders)
        .where(inArray(supplyOrders.id, ids));
    case 'reconciliation':
      return read
        .select({ id: reconciliations.id, label: reconciliations.number })
        .from(reconciliations)
        .where(inArray(reconciliations.id, ids));
    case 'usageOrder':
      return read
        .select({ id: usageOrders.id, label: usageOrders.number })
        .from(usageOrders)
        .where(inArray(usageOrders.id, ids));
    case 'import': {
      const rows = await read
        .select({ id: imports.id, list: imports.list })
        .from(imports)
        .where(inArray(imports.id, ids));
      return rows.map(({ id, list }) => ({ id, label: LISTS[list as ListKind].name }));
    }
    case 'maker':
      return read.select({ id: makers.id, label: makers.name }).from(makers).where(inArray(makers.id, ids));
    default:
      return [];
  }
}
