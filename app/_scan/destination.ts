import type { ScanMeaning } from '@/lib/scanning/meaning';

/** Where a scan leads when no screen takes it; `null`: nowhere. */
export function destination(meaning: ScanMeaning): string | null {
  switch (meaning.kind) {
    case 'set':
      return `/sets/${meaning.setId}`;
    case 'pack':
      return meaning.setId === null ? `/packs/${meaning.packId}` : `/sets/${meaning.setId}`;
    case 'item':
      return `/catalogue/${meaning.itemId}`;
    case 'load':
      return `/loads/${meaning.loadId}`;
    case 'place':
      return `/places/${meaning.placeId}`;
    case 'stock':
      return `/catalogue/${meaning.itemId}`;
    case 'sheet':
      return `/sets/${meaning.setId}/count`;
    case 'case':
      return `/cases/${meaning.caseId}`;
    case 'refused':
      return meaning.setId === null ? null : `/sets/${meaning.setId}`;
    case 'unknown':
      return null;
  }
}
