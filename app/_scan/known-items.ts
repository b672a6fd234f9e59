import type { IdentifierOutput } from '@/lib/calculations/identifier/schema';
import type { ScanMeaning } from '@/lib/scanning/meaning';

/** Items this window has seen by their GTIN: the next scan of one shows its picture before the service has answered. */
const seen = new Map<string, { itemId: string; code: string }>();
const MOST = 1000;

export function noteItem(meaning: ScanMeaning): void {
  if (meaning.kind !== 'item' || meaning.gtin === null) return;
  if (seen.size >= MOST) seen.clear();
  seen.set(meaning.gtin, { itemId: meaning.itemId, code: meaning.code });
}

export function knownItem(reading: IdentifierOutput): { itemId: string; code: string } | null {
  if (reading.state !== 'read') return null;
  const gtin = reading.elements.find(({ meaning }) => meaning === 'gtin')?.plain;
  return (gtin && seen.get(gtin)) || null;
}
