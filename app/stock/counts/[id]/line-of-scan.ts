import type { CountLineShown } from '@/db/queries/shelf/countScreen';
import type { ScanMeaning } from '@/lib/scanning/meaning';
import type { ScannedThing } from './add-thing';

type Found =
  | { kind: 'line'; line: CountLineShown; pieces: number }
  /** Several heaps here could be meant. */
  | { kind: 'which' }
  | { kind: 'notListed'; name: string; thing: ScannedThing }
  | { kind: 'nothing' };

/** Which heap of a count a scanned pack belongs to. What a code does not say narrows nothing. */
export function lineOfScan(meaning: ScanMeaning, lines: readonly CountLineShown[]): Found {
  if (meaning.kind === 'item') {
    const { itemId, lot, useBy, name } = meaning;
    const pieces = meaning.quantity ?? 1;
    const thing = { itemId, lot, useBy, pieces, form: 'sterilePacked' as const };
    return among(
      lines.filter(
        (line) =>
          line.itemId === itemId &&
          (lot === null || line.lot === lot) &&
          (useBy === null || line.useBy === useBy),
      ),
      { name, thing },
    );
  }
  if (meaning.kind === 'pack' && meaning.itemId !== null) {
    const { itemId, lot, useBy, number } = meaning;
    const thing = { itemId, lot, useBy, pieces: 1, form: 'pouch' as const };
    return among(
      lines.filter(
        (line) => line.itemId === itemId && line.form === 'pouch' && line.lot === lot && line.useBy === useBy,
      ),
      { name: number, thing },
    );
  }
  return { kind: 'nothing' };
}

function among(
  found: readonly CountLineShown[],
  { name, thing }: { name: string; thing: ScannedThing },
): Found {
  const [line] = found;
  if (!line) return { kind: 'notListed', name, thing };
  return found.length > 1 ? { kind: 'which' } : { kind: 'line', line, pieces: thing.pieces };
}
