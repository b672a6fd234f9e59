import type { Subject } from '@/db/queries/ledger/subjects';

/** Where a subject is looked at; `null` where it has no page of its own. */
export function subjectHref({ kind, id, label, caseId }: Subject): string | null {
  if (label === null) return null;
  switch (kind) {
    case 'set':
      return `/sets/${id}`;
    case 'case':
      return `/cases/${id}`;
    case 'plan':
      return `/cases/${caseId}/plan`;
    case 'load':
      return `/loads/${id}`;
    case 'pack':
      return `/packs/${id}`;
    case 'item':
      return `/catalogue/${id}`;
    case 'configuration':
      return `/configurations/${id}`;
    case 'place':
      return `/places/${id}`;
    case 'loan':
      return `/loans/${id}`;
    case 'lender':
      return `/lenders/${id}`;
    case 'restock':
      return '/restock';
    case 'reconciliation':
      return `/consignment/reconciliations/${id}`;
    case 'usageOrder':
      return `/consignment/orders/${id}`;
    case 'order':
      return `/restock/orders/${id}`;
    case 'import':
      return '/exchange';
    case 'maker':
      return '/restock/terms';
    default:
      return null;
  }
}
