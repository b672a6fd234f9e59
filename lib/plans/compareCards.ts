import type { ItemId, StartId } from '../identity/ids';
import type { CardBody, CardExtra } from './card';

/** One thing that differs between two versions of a preference card. */
export type CardChange =
  | { kind: 'startAdded'; startId: StartId }
  | { kind: 'startRemoved'; startId: StartId }
  | { kind: 'extraAdded'; extra: CardExtra }
  | { kind: 'extraRemoved'; extra: CardExtra }
  | { kind: 'quantity'; itemId: ItemId; before: number; after: number }
  | { kind: 'extraNote'; itemId: ItemId; before: string | null; after: string | null }
  | { kind: 'note'; before: string | null; after: string | null };

/** What differs between two versions of a card. Empty exactly when both ask for the same, in whatever order they do. */
export function compareCards(before: CardBody, after: CardBody): CardChange[] {
  const changes: CardChange[] = [];
  for (const startId of after.startIds)
    if (!before.startIds.includes(startId)) changes.push({ kind: 'startAdded', startId });
  for (const startId of before.startIds)
    if (!after.startIds.includes(startId)) changes.push({ kind: 'startRemoved', startId });
  const [was, is] = [before, after].map(({ extras }) => new Map(extras.map((one) => [one.itemId, one])));
  for (const [itemId, extra] of is ?? []) {
    const old = was?.get(itemId);
    if (!old) changes.push({ kind: 'extraAdded', extra });
    else {
      if (old.quantity !== extra.quantity)
        changes.push({ kind: 'quantity', itemId, before: old.quantity, after: extra.quantity });
      if (old.note !== extra.note)
        changes.push({ kind: 'extraNote', itemId, before: old.note, after: extra.note });
    }
  }
  for (const [itemId, extra] of was ?? [])
    if (!is?.has(itemId)) changes.push({ kind: 'extraRemoved', extra });
  if (before.note !== after.note) changes.push({ kind: 'note', before: before.note, after: after.note });
  return changes;
}
