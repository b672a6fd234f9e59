'use client';

import { useRouter } from 'next/navigation';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { newClientId } from '@/app/_outbox/new-id';
import { useOutbox } from '@/app/_outbox/use-outbox';
import type { CountLineShown, CountScreen } from '@/db/queries/shelf/countScreen';
import type { SentFigure } from '@/lib/stock/stockCount';

export type AddedThing = Omit<Extract<SentFigure, { kind: 'added' }>, 'kind' | 'id' | 'lineId' | 'doneAt'>;
type OwnLine = Pick<CountLineShown, 'id' | 'own'>;

/** The figures of whoever counts: kept in this browser first, sent until they are stored. */
export function useFigures(count: CountScreen) {
  const router = useRouter();
  /** Figures stored since the page was fetched, by line. */
  const [stored, setStored] = useState<ReadonlyMap<string, number>>(new Map());
  const { outbox, add, doneAt, dismiss } = useOutbox<SentFigure>({
    room: `stockCount.${count.id}`,
    address: `/api/v1/stock-counts/${count.id}/figures`,
    onStored: ({ lineId, pieces }) => {
      setStored((before) => new Map(before).set(lineId, pieces));
      router.refresh();
    },
  });

  const waiting = useMemo(() => {
    const last = new Map<string, SentFigure>();
    for (const { entry } of outbox.pending) {
      const before = last.get(entry.lineId);
      if (!before || before.doneAt < entry.doneAt) last.set(entry.lineId, entry);
    }
    return last;
  }, [outbox.pending]);

  /** The figure of a line: on its way, just stored, or on record; `null`: none. */
  const figureOf = useCallback(
    (line: OwnLine): number | null => waiting.get(line.id)?.pieces ?? stored.get(line.id) ?? line.own,
    [waiting, stored],
  );

  /** Entered in this very moment: several scans may come before the screen is drawn again. */
  const entered = useRef(new Map<string, number>());
  useEffect(() => {
    for (const { item } of outbox.refused) entered.current.delete(item.entry.lineId);
  }, [outbox.refused]);

  const enter = useCallback(
    (lineId: string, pieces: number) => {
      entered.current.set(lineId, pieces);
      add({
        kind: 'line',
        id: newClientId('entry') as SentFigure['id'],
        lineId: lineId as SentFigure['lineId'],
        pieces,
        doneAt: doneAt(),
      });
    },
    [add, doneAt],
  );
  /** Counts so many more of a line, and answers its figure then. */
  const more = useCallback(
    (line: OwnLine, pieces: number): number => {
      const then = (entered.current.get(line.id) ?? figureOf(line) ?? 0) + pieces;
      enter(line.id, then);
      return then;
    },
    [enter, figureOf],
  );
  const addThing = useCallback(
    (thing: AddedThing) => {
      add({
        ...thing,
        kind: 'added',
        id: newClientId('entry') as SentFigure['id'],
        lineId: newClientId('stockCountLine') as SentFigure['lineId'],
        doneAt: doneAt(),
      });
    },
    [add, doneAt],
  );
  const refused = useMemo(
    () => outbox.refused.map(({ item, sentence }) => ({ id: item.id, sentence })),
    [outbox.refused],
  );
  return { outbox, refused, dismiss, waiting, figureOf, enter, more, addThing };
}
