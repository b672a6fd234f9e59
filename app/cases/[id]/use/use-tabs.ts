import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';

/** A place to enter from: a planned plate, free screws, single packs, or a set. */
export interface Tab {
  id: string;
  label: string;
  kind: 'plate' | 'free' | 'packs' | 'set';
  planned?: NonNullable<RecordOfUse['plan']>['construct']['plates'][number];
}

/** Plates of the plan first, then what came single, then the sets that the reader may see into. */
export function tabsOf({ plan, packs, sets, hidden }: RecordOfUse): Tab[] {
  const construct = plan?.construct;
  return [
    ...(construct?.plates ?? []).map(
      (planned): Tab => ({ id: planned.key, label: `Plate ${planned.key}`, kind: 'plate', planned }),
    ),
    ...(construct && construct.freeScrews.length > 0
      ? [{ id: 'free', label: 'Free screws', kind: 'free' } as const]
      : []),
    ...(packs.length > 0 ? [{ id: 'packs', label: 'Single packs', kind: 'packs' } as const] : []),
    ...sets
      .filter(({ id }) => !hidden.some((one) => one.id === id))
      .map(({ id, code }): Tab => ({ id, label: code, kind: 'set' })),
  ];
}
