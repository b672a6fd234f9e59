import { type Construct, construct } from '@/lib/plans/plan';

/** A draft that has not reached the server yet, kept in this browser until it has. */
export interface UnsavedPlan {
  planId: string | null;
  revision: number;
  construct: Construct;
}

const keyOf = (caseId: string) => `unsaved-plan:${caseId}`;

export function keepUnsaved(caseId: string, { planId, revision, construct: kept }: UnsavedPlan): void {
  try {
    localStorage.setItem(keyOf(caseId), JSON.stringify({ planId, revision, construct: kept }));
  } catch {
    // A browser that keeps nothing (private window, full): the server is then the only copy.
  }
}

export function readUnsaved(caseId: string): UnsavedPlan | null {
  try {
    const kept = JSON.parse(localStorage.getItem(keyOf(caseId)) ?? 'null');
    const parsed = construct.safeParse(kept?.construct);
    if (!parsed.success || typeof kept.revision !== 'number') return null;
    return {
      planId: typeof kept.planId === 'string' ? kept.planId : null,
      revision: kept.revision,
      construct: parsed.data,
    };
  } catch {
    return null;
  }
}

export function clearUnsaved(caseId: string): void {
  try {
    localStorage.removeItem(keyOf(caseId));
  } catch {
    // Nothing was kept.
  }
}
