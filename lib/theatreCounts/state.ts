import type { CountedThing, TheatreEntry } from './act';

export interface AddedItem {
  key: string;
  itemId: string | null;
  name: string;
  /** How many came to the table since the count before. */
  pieces: number;
}

/** What the entries of one count in theatre come to. */
export interface TheatreState {
  counted: ReadonlyMap<string, number>;
  implanted: ReadonlyMap<string, number>;
  discarded: ReadonlyMap<string, number>;
  added: ReadonlyMap<string, AddedItem>;
  notOpened: ReadonlySet<string>;
}

export const thingKey = (thing: CountedThing): string =>
  thing.kind === 'line' ? `${thing.setId} ${thing.lineId}` : `added ${thing.key}`;

/** Whatever order the entries arrived in, and however often: of those about one thing the one done last holds. */
export function theatreStateOf(entries: Iterable<TheatreEntry>): TheatreState {
  const once = new Map<string, TheatreEntry>();
  for (const entry of entries) once.set(entry.id, entry);
  const all = [...once.values()].sort((a, b) => compare(a.doneAt, b.doneAt) || compare(a.id, b.id));
  const figures = {
    counted: new Map<string, number>(),
    implanted: new Map<string, number>(),
    discarded: new Map<string, number>(),
  };
  const added = new Map<string, AddedItem>();
  const notOpened = new Set<string>();
  for (const { act } of all) {
    switch (act.kind) {
      case 'added':
        added.set(act.key, { key: act.key, itemId: act.itemId, name: act.name, pieces: act.pieces });
        break;
      case 'notOpened':
        if (act.so) notOpened.add(act.setId);
        else notOpened.delete(act.setId);
        break;
      default:
        figures[act.kind].set(thingKey(act.thing), act.pieces);
    }
  }
  return { ...figures, added, notOpened };
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);
