'use client';

import { useState } from 'react';
import { type MadeOfScan, type ScanEvent, useScans } from '@/app/_scan/use-scans';
import type { BenchAct } from '@/lib/bench/act';
import { type CountState, serialKey } from '@/lib/bench/state';
import { wallClock } from '@/lib/theatre/localTime';
import type { BenchLine } from './bench-subject';

/** What a scan names, where it is a piece: the item, and the serial number where it has one. */
function pieceOf(scan: ScanEvent): { itemId: string; serial: string | null; name: string } | null {
  const { meaning } = scan;
  if (meaning.kind === 'item') return { itemId: meaning.itemId, serial: meaning.serial, name: meaning.name };
  if (meaning.kind === 'stock') return { itemId: meaning.itemId, serial: null, name: meaning.code };
  if (meaning.kind === 'pack' && meaning.itemId !== null)
    return { itemId: meaning.itemId, serial: meaning.number, name: meaning.code };
  return null;
}

/**
 * Scans at the bench: a piece of a line is one more of it, a piece of no line is foreign. Of several lines that hold the
 * item it is the one in hand, or else the first that is not full. Answers what the last scan did, in words.
 */
export function useBenchScans({
  countId,
  lines,
  lineId,
  state,
  set,
  enter,
  onLine,
}: {
  countId: string;
  lines: readonly BenchLine[];
  lineId: string | null;
  state: CountState;
  set: { id: string; code: string };
  enter: (act: BenchAct, scanId?: string) => unknown;
  onLine: (lineId: string) => void;
}): string {
  const [said, setSaid] = useState('');
  useScans(
    (scan) => {
      // asked about, refused or not known: the strip says so
      if (scan.verdict !== 'understood' && scan.verdict !== 'already' && !scan.another) return 'passed';
      // the count knows more than the service: what was taken back, what was counted by hand, what still waits to be sent
      const made = (verdict: MadeOfScan['verdict'], says: string): 'taken' | MadeOfScan => {
        setSaid(says);
        return scan.another || verdict === scan.verdict ? 'taken' : { verdict, says };
      };
      if (scan.meaning.kind === 'set' && scan.meaning.setId === set.id) {
        setSaid(`${set.code} is the set you are counting.`);
        return 'taken';
      }
      const piece = pieceOf(scan);
      if (!piece) return 'passed';
      const own = lines.filter(({ itemId }) => itemId === piece.itemId);
      if (own.length === 0) {
        if (scan.verdict === 'already' && (state.foreign.get(piece.itemId)?.found ?? 0) > 0)
          return made('already', `${piece.name}: already entered as foreign${when(scan.before?.at)}.`);
        enter({ kind: 'foreign', itemId: piece.itemId as never, pieces: 1, note: null }, scan.id);
        return made(
          'understood',
          `${piece.name} belongs to no line of ${set.code}: entered as foreign. Find its home below.`,
        );
      }
      const line =
        own.find(({ id }) => id === lineId) ??
        own.find(({ id, expected }) => (state.lines.get(id)?.found ?? 0) < expected) ??
        own[0];
      if (!line) return 'passed';
      const before = piece.serial === null ? undefined : state.serials.get(serialKey(line.id, piece.serial));
      if (before !== undefined)
        return made('already', `${line.name}, ${piece.serial}: already counted${when(before)}.`);
      if (scan.verdict === 'already' && piece.serial === null)
        return made('already', `${line.name}: already counted${when(scan.before?.at)}.`);
      enter({ kind: 'oneMore', lineId: line.id as never, serial: piece.serial }, scan.id);
      onLine(line.id);
      return made('understood', `One more: ${line.name}.`);
    },
    // the count itself knows what it holds: a piece whose entry was taken back counts when it is scanned again
    { context: { kind: 'bench', countId: countId as never }, takes: 'everything' },
  );
  return said;
}

const when = (at: string | undefined) => (at === undefined ? '' : ` ${wallClock(at).time}`);
