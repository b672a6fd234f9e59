'use client';

import { useRouter } from 'next/navigation';
import { useScans } from '@/app/_scan/use-scans';
import type { ScanMeaning } from '@/lib/scanning/meaning';

/** On the screens of tracing a scan asks where its thing has been, instead of opening it. */
export function TraceScans() {
  const router = useRouter();
  useScans(({ meaning, text }) => {
    const asks = askedBy(meaning);
    router.push(asks ?? `/trace?q=${encodeURIComponent(text)}`);
    return 'taken';
  });
  return null;
}

/** `null`: it is looked for as text. */
function askedBy(meaning: ScanMeaning): string | null {
  const ask = (params: Record<string, string>) => `/trace/result?${new URLSearchParams(params)}`;
  switch (meaning.kind) {
    case 'item':
    case 'stock':
      return meaning.lot === null ? null : ask({ of: 'lot', item: meaning.itemId, lot: meaning.lot });
    case 'set':
      return ask({ of: 'set', set: meaning.setId });
    case 'load':
      return ask({ of: 'load', load: meaning.loadId });
    case 'case':
      return ask({ of: 'case', case: meaning.caseId });
    default:
      return null;
  }
}
