import { type IncomingScan, incomingScan } from '@/lib/scanning/incoming';

/**
 * Scans that are not stored by the service yet, kept by the browser under a key each, so that two windows never overwrite
 * one another. It is written before anything else is done with a scan, and survives a reload and a power cut of the
 * screen. The ticket of the session goes with each: it names who scanned, and opens nothing.
 */
const KEY = 'kitwright.scan.';

/** Whether the browser keeps it; where it does not, the scan is only in this window. */
export function keepScan(scan: IncomingScan): boolean {
  try {
    localStorage.setItem(KEY + scan.id, JSON.stringify(scan));
    return true;
  } catch {
    return false;
  }
}

export function dropScan(id: string): void {
  try {
    localStorage.removeItem(KEY + id);
  } catch {
    // where nothing can be kept, nothing was
  }
}

/** Those kept from before, in the order they were made. What is not a scan of ours is left alone. */
export function keptScans(): IncomingScan[] {
  try {
    const found: IncomingScan[] = [];
    for (let at = 0; at < localStorage.length; at += 1) {
      const key = localStorage.key(at);
      if (!key?.startsWith(KEY)) continue;
      const parsed = incomingScan.safeParse(parsedJson(localStorage.getItem(key)));
      if (parsed.success) found.push(parsed.data);
    }
    return found.sort((a, b) => (a.doneAt < b.doneAt ? -1 : 1));
  } catch {
    return [];
  }
}

function parsedJson(text: string | null): unknown {
  try {
    return JSON.parse(text ?? 'null');
  } catch {
    return null;
  }
}
