import { and, desc, eq, isNull } from 'drizzle-orm';
import type { Item } from '@/lib/catalogue/item';
import type { ConstructSource } from '@/lib/emergency/asked';
import { type PersonId, personId, planId, startId } from '@/lib/identity/ids';
import { type Construct, construct } from '@/lib/plans/plan';
import { mayRead, type Reading } from '../../reader';
import { cases, people, planStarts, plans } from '../../schema';
import { keptCatalogue } from '../caseKit';

/** A construct that an emergency can go by: a saved start, or the confirmed plan of a case. */
export interface ConstructOnFile {
  from: ConstructSource;
  kind: 'start' | 'plan';
  /** The name of the start, or the reference of the case. */
  name: string;
  surgeonId: PersonId;
  surgeon: string;
  /** When it was saved or confirmed, an ISO instant. */
  at: string;
  /** For the limb that was asked for, without the note of its case. */
  construct: Construct;
  /** Its plates by name. */
  plates: string[];
  /** Plates of it that are no longer current. */
  platesGone: string[];
}

type Limb = 'left' | 'right';

/**
 * Every construct on file for a region and side, saved starts by name and then plans, the newest first. One that was stated for
 * the other side is among them only where each of its plates is for this one, too.
 */
export async function constructsOnFile(
  db: Reading,
  region: Construct['region'],
  limb: Limb,
): Promise<ConstructOnFile[]> {
  mayRead(db, 'readHospital');
  const [starts, confirmed, catalogue] = await Promise.all([
    startsOnFile(db),
    plansOnFile(db),
    keptCatalogue(db),
  ]);
  const items = new Map(catalogue.map((item) => [item.id, item]));
  const seen = new Set<string>();
  return [...starts, ...confirmed]
    .filter((one) => one.construct.region === region && servesSide(one.construct, limb, items))
    .map((one) => onFile(one, limb, items))
    .filter((one) => {
      // the same construct of the same surgeon, planned again and again, is one choice
      const key = JSON.stringify([one.kind, one.surgeonId, one.construct]);
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
}

/** One of them by where it is from; `null`: it is gone, or not for this side. */
export async function constructFrom(
  db: Reading,
  from: ConstructSource,
  limb: Limb,
): Promise<ConstructOnFile | null> {
  mayRead(db, 'readHospital');
  const [starts, confirmed, catalogue] = await Promise.all([
    startsOnFile(db, from),
    plansOnFile(db, from),
    keptCatalogue(db),
  ]);
  const [one] = [...starts, ...confirmed];
  const items = new Map(catalogue.map((item) => [item.id, item]));
  return one && servesSide(one.construct, limb, items) ? onFile(one, limb, items) : null;
}

type Found = Omit<ConstructOnFile, 'plates' | 'platesGone'>;

async function startsOnFile({ read }: Reading, only?: string): Promise<Found[]> {
  const rows = await read
    .select({ start: planStarts, surgeon: people.name })
    .from(planStarts)
    .innerJoin(people, eq(people.id, planStarts.personId))
    .where(and(isNull(planStarts.retiredAt), only === undefined ? undefined : eq(planStarts.id, only)))
    .orderBy(planStarts.name, planStarts.id);
  return rows.map(({ start, surgeon }) => ({
    from: startId.parse(start.id),
    kind: 'start',
    name: start.name,
    surgeonId: personId.parse(start.personId),
    surgeon,
    at: start.savedAt,
    construct: construct.parse(start.body),
  }));
}

async function plansOnFile({ read }: Reading, only?: string): Promise<Found[]> {
  const rows = await read
    .select({ plan: plans, booked: cases, surgeon: people.name })
    .from(plans)
    .innerJoin(cases, eq(cases.id, plans.caseId))
    .innerJoin(people, eq(people.id, cases.surgeonId))
    .where(and(eq(plans.status, 'confirmed'), only === undefined ? undefined : eq(plans.id, only)))
    .orderBy(desc(plans.confirmedAt), desc(plans.id));
  return rows.map(({ plan, booked, surgeon }) => ({
    from: planId.parse(plan.id),
    kind: 'plan',
    name: booked.reference,
    surgeonId: personId.parse(booked.surgeonId),
    surgeon,
    at: plan.confirmedAt ?? plan.writtenAt,
    construct: construct.parse(plan.body),
  }));
}

function servesSide({ limb: stated, plates }: Construct, limb: Limb, items: Map<string, Item>): boolean {
  if (stated === limb) return true;
  return plates.every(({ plateItemId }) => {
    const plate = items.get(plateItemId);
    // a side that is not stated is no fit
    return plate?.side === 'either' || plate?.side === limb;
  });
}

function onFile(one: Found, limb: Limb, items: Map<string, Item>): ConstructOnFile {
  return {
    ...one,
    construct: { ...one.construct, limb, note: null },
    plates: one.construct.plates.map(({ plateItemId }) => items.get(plateItemId)?.name ?? plateItemId),
    platesGone: one.construct.plates.flatMap(({ plateItemId }) => {
      const plate = items.get(plateItemId);
      return plate?.status === 'current' ? [] : [plate?.name ?? plateItemId];
    }),
  };
}
