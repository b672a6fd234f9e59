import 'server-only';
import { setImmediate as turnOfTheLoop } from 'node:timers/promises';
import type { Database } from '@/db/client';
import { hiddenFrom } from '@/db/queries/bench/blind';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { newestChange } from '@/db/queries/ledgerHead';
import { type SetsOnFile, setsOnFile } from '@/db/queries/store';
import { hospitalToday } from '@/db/queries/today';
import type { CaseId } from '@/lib/identity/ids';
import { type KitSummary, kitSummary } from '@/lib/kits/summary';
import { highsSolver } from './solver/highs';

/** How a case stands: its kit in few words, or that nobody has planned it yet. */
export type Readiness =
  | { kind: 'kit'; summary: KitSummary; planStatus: 'confirmed' | 'draft' }
  | { kind: 'noPlan' };

const kept = globalThis as typeof globalThis & { kitwrightReadiness?: { under: string; known: Known } };

/** By case; `null` for one that vanished. What is under way is waited for, not begun again. */
type Known = Map<CaseId, Promise<Readiness | null>>;

/**
 * How each of these cases stands against the store as it is now. Worked out once and kept for the day, until something is
 * written that can change a kit; a case that vanished meanwhile is left out. Others have their turn between two cases.
 */
export async function readinessOf(db: Database, ids: readonly CaseId[]): Promise<Map<CaseId, Readiness>> {
  const change = await newestChange(db);
  const under = `${change} ${await hospitalToday(db.read)}`;
  if (kept.kitwrightReadiness?.under !== under || change === null)
    kept.kitwrightReadiness = { under, known: new Map() };
  // whoever checks a set blind sees the store without it, and nobody else sees theirs
  const blind = (await hiddenFrom(db)).size > 0;
  const known: Known = blind ? new Map() : kept.kitwrightReadiness.known;
  let read: { change: string | null; sets: SetsOnFile } | undefined;
  const standing = async (id: CaseId) => {
    await turnOfTheLoop();
    // what was written in the meantime makes a case newer than its name, never half old and half new
    const present = await newestChange(db);
    if (!read || read.change !== present) read = { change: present, sets: await setsOnFile(db) };
    return readinessNow(db, id, read.sets);
  };
  const found = new Map<CaseId, Readiness>();
  for (const id of ids) {
    const one = known.get(id) ?? standing(id);
    known.set(id, one);
    // what failed is tried again
    one.catch(() => known.delete(id));
    const readiness = await one;
    if (readiness) found.set(id, readiness);
  }
  return found;
}

async function readinessNow(db: Database, id: CaseId, sets: SetsOnFile): Promise<Readiness | null> {
  const answer = await loadKitOfCase(db, id, { solver: highsSolver, lengthCover: 'figure', sets });
  if (answer.kind === 'noPlan') return { kind: 'noPlan' };
  if (answer.kind !== 'kit') return null;
  const { kit, catalogue, plan } = answer.answer;
  return {
    kind: 'kit',
    summary: kitSummary(kit, catalogue),
    planStatus: plan.status === 'draft' ? 'draft' : 'confirmed',
  };
}
