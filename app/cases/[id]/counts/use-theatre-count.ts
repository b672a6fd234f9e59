'use client';

import { useCallback, useMemo, useState } from 'react';
import { newClientId } from '@/app/_outbox/new-id';
import { useOutbox } from '@/app/_outbox/use-outbox';
import type { OpenTheatreCount } from '@/db/queries/theatreCounts/countsScreen';
import type { CountedThing, SentTheatreEntry, TheatreAct } from '@/lib/theatreCounts/act';
import { theatreStateOf, thingKey } from '@/lib/theatreCounts/state';

/** What one figure is about, as the two people see it: what is expected is not among it. */
export interface CountRow {
  key: string;
  thing: CountedThing;
  name: string;
  under: string;
  layer: number | null;
  /** Whether a piece of it may lie in the patient afterwards. */
  implant: boolean;
}

/** The entries of one count: what the server has, and what this browser still keeps for it. */
export function useTheatreCount(count: OpenTheatreCount) {
  const [stored, setStored] = useState<readonly SentTheatreEntry[]>([]);
  const { outbox, add, doneAt, dismiss, flush } = useOutbox<SentTheatreEntry>({
    room: `theatre-count.${count.id}`,
    address: `/api/v1/theatre-counts/${count.id}/entries`,
    onStored: (entry) => setStored((now) => [...now, entry]),
  });
  const saved = useMemo(() => {
    const ids = new Set(count.entries.map(({ id }) => id));
    return [...count.entries, ...stored.filter(({ id }) => !ids.has(id))];
  }, [count.entries, stored]);
  const state = useMemo(
    () => theatreStateOf([...saved, ...outbox.pending.map(({ entry }) => entry)]),
    [saved, outbox.pending],
  );
  const pendingKeys = useMemo(
    () =>
      new Set(outbox.pending.flatMap(({ entry: { act } }) => ('thing' in act ? [thingKey(act.thing)] : []))),
    [outbox.pending],
  );
  const enter = useCallback(
    (act: TheatreAct) => add({ id: newClientId('entry') as SentTheatreEntry['id'], act, doneAt: doneAt() }),
    [add, doneAt],
  );
  const groups = useMemo(() => groupsOf(count, state), [count, state]);
  return { outbox, saved, state, pendingKeys, enter, dismiss, flush, groups };
}

export interface CountGroup {
  id: string;
  title: string;
  /** A set that may be said to be unopened. */
  setId: string | null;
  rows: CountRow[];
}

/** The id of the group of what came to the table beside the sets. */
export const ADDED = 'added';

function groupsOf(count: OpenTheatreCount, state: ReturnType<typeof theatreStateOf>): CountGroup[] {
  const sets = count.sets.map(
    ({ id, code, lines }): CountGroup => ({
      id,
      title: code,
      setId: id,
      rows: lines.map(({ setId, lineId, name, code: item, layer, place, implant }): CountRow => {
        const thing = { kind: 'line', setId, lineId } as CountedThing;
        return {
          key: thingKey(thing),
          thing,
          name,
          under: `${item}, layer ${layer}, ${place}`,
          layer,
          implant,
        };
      }),
    }),
  );
  const named = new Map([
    ...count.addedBefore.map(({ key, name }) => [key, name] as const),
    ...[...state.added.values()].map(({ key, name }) => [key, name] as const),
  ]);
  const rows = [...named].map(([key, name]): CountRow => {
    const thing: CountedThing = { kind: 'added', key };
    const since = state.added.get(key)?.pieces;
    const under =
      count.moment === 'first' || since === undefined
        ? 'added at the table'
        : `${since} added since the first count`;
    return { key: thingKey(thing), thing, name, under, layer: null, implant: true };
  });
  return [...sets, { id: ADDED, title: 'Added at the table', setId: null, rows }];
}
