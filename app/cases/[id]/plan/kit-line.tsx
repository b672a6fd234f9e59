'use client';

import type { Construct } from '@/lib/plans/plan';

/** Whether the kit for the plan as it stands is there. */
export function KitLine(_: { caseId: string; construct: Construct }) {
  return null;
}
