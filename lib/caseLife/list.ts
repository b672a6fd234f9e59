import { z } from 'zod';
import { itemId, type SetId, setId, stockId } from '../identity/ids';
import type { CaseKit } from '../kits/kit';
import type { Store } from '../kits/store';
import { plainDate } from '../quantities/plainDate';

const kitRole = z.enum(['open', 'hold']);

/** One line of what there is to fetch, as it was worked out when the list was made. */
export const wantedLine = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('set'),
    setId,
    code: z.string(),
    configurationName: z.string(),
    role: kitRole,
    /** Other copies that serve this plan just as well; nothing else is taken in its place. */
    alike: z.array(z.object({ setId, code: z.string() })).max(60),
    /** When it will be in the sterile store, where it was not there. */
    readyAt: z.string().nullable(),
  }),
  z.object({
    kind: z.literal('pack'),
    stockId,
    itemId,
    form: z.enum(['pouch', 'sterilePacked']),
    role: kitRole,
    quantity: z.number().int().positive(),
    lot: z.string().nullable(),
    useBy: plainDate.nullable(),
  }),
]);
export type WantedLine = z.infer<typeof wantedLine>;
export const wantedList = z.array(wantedLine).max(400);

/** Ids of lines within their list. */
export const lineKey = (line: WantedLine): string => (line.kind === 'set' ? line.setId : line.stockId);

/** What a kit says is to be fetched, the sets first. What is short is no line: nobody can fetch it. */
export function linesOfKit(kit: Pick<CaseKit, 'sets' | 'packs'>): WantedLine[] {
  return [
    ...kit.sets.map((set) => ({
      kind: 'set' as const,
      setId: set.setId,
      code: set.code,
      configurationName: set.configurationName,
      role: set.role,
      alike: set.alike.map(({ setId: id, code }) => ({ setId: id, code })),
      readyAt: set.readyAt,
    })),
    ...kit.packs.map(({ stockId: id, itemId: item, form, role, quantity, lot, useBy }) => ({
      kind: 'pack' as const,
      stockId: id,
      itemId: item,
      form,
      role,
      quantity,
      lot,
      useBy,
    })),
  ];
}

/** Of copies that serve alike, the one that is spoken for by this very case, or lies with its kit already, goes first. */
export function preferOwn(
  list: readonly WantedLine[],
  own: readonly { setId: SetId; code: string }[],
): WantedLine[] {
  const named = new Set(list.map(lineKey));
  return list.map((line) => {
    if (line.kind !== 'set' || own.some((one) => one.setId === line.setId)) return line;
    const mine = own.find(
      (one) => !named.has(one.setId) && line.alike.some((other) => other.setId === one.setId),
    );
    if (!mine) return line;
    named.add(mine.setId);
    const others = line.alike.filter((other) => other.setId !== mine.setId);
    return {
      ...line,
      setId: mine.setId,
      code: mine.code,
      alike: [{ setId: line.setId, code: line.code }, ...others],
    };
  });
}

/**
 * The store as far as a list names it: what a sheet that follows the list is worked out from, so that no other tray or heap
 * takes the place of one on it. Of copies that serve alike, the one that was picked stands for its line.
 */
export function storeOfList(store: Store, list: readonly WantedLine[], picked: readonly SetId[]): Store {
  const own = preferOwn(
    list,
    picked.map((id) => ({ setId: id, code: '' })),
  );
  const named = new Set(own.map(lineKey));
  return {
    sets: store.sets.filter(({ id }) => named.has(id)),
    packs: store.packs.filter(({ id }) => named.has(id)),
  };
}
