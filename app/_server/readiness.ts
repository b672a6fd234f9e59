import 'server-only';
import type { Database } from '@/db/client';
import { hiddenFrom } from '@/db/queries/bench/blind';
import { loadKitOfCase } from '@/db/queries/caseKit';
import { newestChange } from '@/db/queries/ledgerHead';
import { setsOnFile } from '@/db/queries/store';
import { hospitalToday } from '@/db/queries/today';
import type { CaseId } from '@/lib/identity/ids';
import { type KitSummary, kitSummary } from '@/lib/kits/summary';
import { highsSolver } from './solver/highs';

/** How a case stands: its kit in few words, or that nobody has planned it yet. */
export type Readiness =
  | { kind: 'kit'; summary: KitSummary; planStatus: 'confirmed' | 'draft' }
  | { kind: 'noPlan' };

const kept = globalThis as typeof globalThis & {
  kitwrightReadiness?: { under: string; known: Map<CaseId, Readiness> };
};

/**
 * How each of these cases stands against the store as it is now. Worked out once and kept for the day, until something is
 * written that can change a kit; a case that vanished meanwhile is left out.
 */
export async function readinessOf(db: Database, ids: readonly CaseId[]): Promise<Map<CaseId, Readiness>> {
  const change = await newestChange(db);
  const under = `${change} ${await hospitalToday(db.read)}`;
  if (kept.kitwrightReadiness?.under !== under || change === null)
    kept.kitwrightReadiness = { under, known: new Map() };
  // whoever checks a set blind sees the store without it, and nobody else sees theirs
  const blind = (await hiddenFrom(db)).size > 0;
  const known = blind ? new Map<CaseId, Readiness>() : kept.kitwrightReadiness.known;
  const missing = ids.filter((id) => !known.has(id));
  const sets = missing.length === 0 ? undefined : await setsOnFile(db);
  for (const id of missing) {
    const answer = await loadKitOfCase(db, id, { solver: highsSolver, lengthCover: 'figure', sets });
    if (answer.kind === 'noPlan') known.set(id, { kind: 'noPlan' });
    if (answer.kind !== 'kit') continue;
    const { kit, catalogue, plan } = answer.answer;
    known.set(id, {
      kind: 'kit',
      summary: kitSummary(kit, catalogue),
      planStatus: plan.status === 'draft' ? 'draft' : 'confirmed',
    });
  }
  return new Map(ids.flatMap((id) => (known.has(id) ? [[id, known.get(id) as Readiness] as const] : [])));
}
