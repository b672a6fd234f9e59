'use client';

import { useCallback, useRef } from 'react';
import { useAct } from '@/app/_turns/use-act';
import type { DayCaseLine } from './day-table';

/** Changes places with the case before or after it in the same theatre; the whole order is sent as it was seen. */
export function useOrder(day: string, lines: readonly DayCaseLine[]) {
  const { act, pending, refusal } = useAct();
  const now = useRef(lines);
  now.current = lines;
  const swap = useCallback(
    (id: string, way: -1 | 1) => {
      const one = now.current.find((line) => line.id === id);
      if (!one) return;
      const mates = now.current.filter(
        ({ theatreId, cancelled }) => theatreId === one.theatreId && cancelled === null,
      );
      const at = mates.findIndex((line) => line.id === id);
      const other = mates[at + way];
      if (!other) return;
      const order = [...mates];
      order[at] = other;
      order[at + way] = one;
      void act(
        '/api/v1/theatre-list/order',
        {
          theatreId: one.theatreId,
          date: day,
          order: order.map(({ id: caseId, revision }) => ({ caseId, revision })),
        },
        `${one.reference} is now ${way === -1 ? 'before' : 'after'} ${other.reference}.`,
      );
    },
    [act, day],
  );
  return { swap, pending, refusal };
}
