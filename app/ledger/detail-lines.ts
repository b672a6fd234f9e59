import type { Scalar } from '@/lib/ledger/correction';

/** No entry is shown in more lines: a whole configuration is read in its own place. */
const MOST_LINES = 60;

/** Every value of a detail with the names on the way to it, in the order in which they stand there. */
export function detailLines(detail: unknown): { path: string[]; value: Scalar }[] {
  const lines: { path: string[]; value: Scalar }[] = [];
  const walk = (value: unknown, path: string[]) => {
    if (lines.length >= MOST_LINES) return;
    if (value !== null && typeof value === 'object') {
      for (const [name, inner] of Object.entries(value)) walk(inner, [...path, name]);
    } else lines.push({ path, value: value as Scalar });
  };
  walk(detail, []);
  return lines;
}
