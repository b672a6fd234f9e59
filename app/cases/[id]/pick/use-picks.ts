'use client';

import { useRouter } from 'next/navigation';
import { useCallback, useMemo, useState } from 'react';
import { isSingle, thingOf } from '@/app/_kit/at-hand';
import { newClientId } from '@/app/_outbox/new-id';
import { useOutbox } from '@/app/_outbox/use-outbox';
import { useScans } from '@/app/_scan/use-scans';
import type { KitLine } from '@/db/queries/caseLife/kitLines';
import type { KitScreen } from '@/db/queries/caseLife/kitScreen';
import type { SentPick, ThingAtHand } from '@/lib/caseLife/act';
import { pickWords } from '@/lib/wording/case-life';
import { thingWords } from '@/lib/wording/scans';

/** The line a thing is for, as far as it can be told here: the server has the last word. */
const lineOf = (kit: KitScreen, thing: ThingAtHand): KitLine | undefined =>
  kit.lines.find(({ key, alike }) =>
    thing.kind === 'set'
      ? key === thing.setId || alike.some(({ setId }) => setId === thing.setId)
      : thing.kind === 'stock' && key === thing.stockId,
  );

/** What is picked here, saved or not, and how scans and presses become picks. */
export function usePicks(
  booked: { id: string; reference: string },
  kit: KitScreen,
  { mayPick, fetching }: { mayPick: boolean; fetching: boolean },
) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const { outbox, add, doneAt, dismiss } = useOutbox<SentPick>({
    room: `kit.${booked.id}`,
    address: `/api/v1/cases/${booked.id}/kit/picks`,
    onStored: () => router.refresh(),
  });
  const picking = kit.stage === 'picking' && !kit.hidden;

  const goingBack = useMemo(
    () =>
      new Set(
        outbox.pending.flatMap(({ entry }) => (entry.kind === 'putBack' ? [entry.pickId as string] : [])),
      ),
    [outbox.pending],
  );
  const pendingKeys = useMemo(
    () =>
      new Set(
        outbox.pending.flatMap(({ entry }) =>
          entry.kind === 'pick' ? (lineOf(kit, entry.thing)?.key ?? []) : [],
        ),
      ),
    [outbox.pending, kit],
  );

  const pick = useCallback(
    (thing: ThingAtHand, quantity: number, how: 'scan' | 'touch', scanId: string | null = null) => {
      const id = newClientId('pick') as Extract<SentPick, { kind: 'pick' }>['id'];
      add({ kind: 'pick', id, thing, quantity, how, scanId: scanId as never, doneAt: doneAt() });
    },
    [add, doneAt],
  );
  const putBack = useCallback(
    (pickId: string) => {
      if (goingBack.has(pickId)) return;
      add({
        kind: 'putBack',
        id: newClientId('entry') as Extract<SentPick, { kind: 'putBack' }>['id'],
        pickId: pickId as never,
        doneAt: doneAt(),
      });
    },
    [add, doneAt, goingBack],
  );
  const have = useCallback(
    (line: KitLine, setId: string = line.key) => {
      const thing = (
        line.kind === 'set' ? { kind: 'set', setId, packId: null } : { kind: 'stock', stockId: line.key }
      ) as ThingAtHand;
      pick(thing, line.wanted - line.pickedPieces, 'touch');
      setSaid(`${line.name}: with the kit.`);
    },
    [pick],
  );

  useScans(
    (scan) => {
      if (scan.verdict !== 'understood' && scan.verdict !== 'already' && !scan.another) return 'passed';
      const thing = thingOf(scan);
      if (!thing || !mayPick) return 'passed';
      const line = lineOf(kit, thing);
      const back = kit.toPutBack.find(({ name }) => nameIn(scan.meaning) === name);
      if (back && (kit.stage === 'toPutBack' || !line)) {
        putBack(back.pickId);
        setSaid(`${back.name}: back to ${back.place ?? 'its place'}.`);
        return 'taken';
      }
      if (fetching) {
        pick(thing, 1, 'scan', scan.id);
        setSaid('');
        return 'taken';
      }
      if (kit.stage === 'notBegun') {
        // scanned while the list is still on its way, the thing must not lead away from here, nor count as picked
        setSaid(pickWords.beginFirst(thingWords(scan.meaning)));
        return 'taken';
      }
      if (!picking) return 'passed';
      if (line && line.pickedPieces >= line.wanted && isSingle(thing)) {
        setSaid(`${line.name} is with the kit already.`);
        return 'taken';
      }
      pick(thing, 1, 'scan', scan.id);
      setSaid(line ? `${line.name}: with the kit.` : '');
      return 'taken';
    },
    { context: { kind: 'kit', caseId: booked.id as never }, takes: 'everything' },
  );

  const byWalk = useMemo(
    () =>
      [...kit.lines].sort(
        (a, b) =>
          (a.place?.metres ?? Infinity) - (b.place?.metres ?? Infinity) || a.name.localeCompare(b.name),
      ),
    [kit.lines],
  );
  const left = byWalk.filter(({ pickedPieces, wanted }) => pickedPieces < wanted);
  const there = byWalk.filter(({ pickedPieces, wanted }) => pickedPieces >= wanted);
  const next = left.find(
    ({ key, problems, alike }) => !pendingKeys.has(key) && (problems.length === 0 || alike.length > 0),
  );
  return { outbox, dismiss, said, goingBack, pendingKeys, putBack, have, left, there, next };
}

/** What a set on a pick is called. */
const nameIn = (meaning: { kind: string; code?: string }): string | null =>
  meaning.kind === 'set' || meaning.kind === 'pack' ? (meaning.code ?? null) : null;
