import type { DelayAct, PieceAct, UseEntry } from './act';

/** A piece, or several alike, that stands in the record. */
export interface UsedPiece extends Omit<PieceAct, 'kind'> {
  entryId: string;
  doneAt: string;
  /** Why it was wasted, as it was named last; `null`: not stated. */
  reasonId: string | null;
}

/** A delay that stands in the record. */
export interface StatedDelay extends Omit<DelayAct, 'kind'> {
  entryId: string;
  doneAt: string;
}

/** What the entries of one record of use come to. */
export interface UseState {
  /** In the order they were done, without those taken back. */
  pieces: UsedPiece[];
  /** The same of delays. */
  delays: StatedDelay[];
  /** Entries taken back, and by which entry. */
  takenBack: ReadonlyMap<string, string>;
}

/** Whatever order the entries arrived in, and however often: each counts once, and one that is taken back not at all. */
export function stateOfUse(entries: Iterable<UseEntry>): UseState {
  const once = new Map<string, UseEntry>();
  for (const entry of entries) once.set(entry.id, entry);
  const all = [...once.values()].sort((a, b) => compare(a.doneAt, b.doneAt) || compare(a.id, b.id));
  const takenBack = new Map<string, string>();
  for (const { id, act } of all)
    if (act.kind === 'takenBack' && !takenBack.has(act.entryId)) takenBack.set(act.entryId, id);
  const reasonOf = new Map<string, string | null>();
  for (const { act } of all) if (act.kind === 'reason') reasonOf.set(act.entryId, act.reasonId);
  const pieces = all.flatMap(({ id, act, doneAt }): UsedPiece[] => {
    if (act.kind !== 'piece' || takenBack.has(id)) return [];
    const { kind: _piece, ...piece } = act;
    return [{ ...piece, entryId: id, doneAt, reasonId: reasonOf.get(id) ?? null }];
  });
  const delays = all.flatMap(({ id, act, doneAt }): StatedDelay[] => {
    if (act.kind !== 'delay' || takenBack.has(id)) return [];
    const { kind: _delay, ...delay } = act;
    return [{ ...delay, entryId: id, doneAt }];
  });
  return { pieces, delays, takenBack };
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/** A source by one text, for maps. */
export const sourceKey = (
  source: { kind: 'slot'; setId: string; lineId: string } | { kind: 'pack'; pickId: string },
): string => (source.kind === 'slot' ? `${source.setId} ${source.lineId}` : source.pickId);
