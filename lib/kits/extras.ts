import type { ItemId, SetId, StockId } from '../identity/ids';
import type { CardExtra } from '../plans/card';
import type { PlainDate } from '../quantities/plainDate';
import { availableFor } from './availability';
import type { CaseKit, KitPlace } from './kit';
import type { Store } from './store';

/** One thing a preference card asks for, and where it can be had for the case. */
export interface ExtraFound extends CardExtra {
  /** In trays that are opened for the plan anyway: pieces that the plan itself does not take. */
  opened: { setId: SetId; code: string; pieces: number }[];
  /** Single packs that the plan leaves in store, the first to expire first. */
  packs: {
    stockId: StockId;
    form: 'pouch' | 'sterilePacked';
    pieces: number;
    lot: string | null;
    useBy: PlainDate | null;
    place: KitPlace | null;
  }[];
  /** Codes of trays that hold it and stay closed for this plan: to open one for it is for people to decide. */
  closed: string[];
  /** Pieces asked for that neither an opened tray nor a pack has. */
  lacking: number;
}

/**
 * Where what a card asks for can be had, from the same store as the kit. It never changes the kit, and it holds nothing up: a
 * wish is not a must-have.
 */
export function findExtras(
  extras: readonly CardExtra[],
  {
    kit,
    store,
    caseDate,
  }: { kit: Pick<CaseKit, 'sets' | 'packs' | 'pickList'>; store: Store; caseDate: PlainDate },
): ExtraFound[] {
  const { sets, packs } = availableFor(store, caseDate);
  const openedIds = new Set(kit.sets.filter(({ role }) => role === 'open').map(({ setId }) => setId));
  // a tray that comes back in time is opened too, though it is not in store yet
  const opened = store.sets.filter(({ id }) => openedIds.has(id));
  return extras.map((extra) => {
    const inOpened = opened.flatMap((set) => {
      const pieces = foundIn(set.contents, extra.itemId) - takenFromSet(kit, set.id, extra.itemId);
      return pieces > 0 ? [{ setId: set.id, code: set.code, pieces }] : [];
    });
    const inPacks = packs
      .filter(({ itemId }) => itemId === extra.itemId)
      .map((pack) => ({
        stockId: pack.id,
        form: pack.form,
        pieces: pack.quantity - takenFromPack(kit, pack.id),
        lot: pack.lot,
        useBy: pack.useBy,
        place: pack.place,
      }))
      .filter(({ pieces }) => pieces > 0)
      .sort(
        (a, b) => (a.useBy ?? '9999').localeCompare(b.useBy ?? '9999') || a.stockId.localeCompare(b.stockId),
      );
    const closed = sets
      .filter((set) => !openedIds.has(set.id) && foundIn(set.contents, extra.itemId) > 0)
      .map(({ code }) => code)
      .sort();
    const there = [...inOpened, ...inPacks].reduce((sum, { pieces }) => sum + pieces, 0);
    return {
      ...extra,
      opened: inOpened,
      packs: inPacks,
      closed,
      lacking: Math.max(0, extra.quantity - there),
    };
  });
}

const foundIn = (contents: Store['sets'][number]['contents'], itemId: ItemId): number =>
  contents.reduce((sum, line) => sum + (line.itemId === itemId ? line.found : 0), 0);

const takenFromSet = ({ pickList }: Pick<CaseKit, 'pickList'>, setId: SetId, itemId: ItemId): number =>
  pickList.reduce(
    (sum, line) =>
      sum +
      (line.itemId === itemId && line.from.kind === 'set' && line.from.setId === setId ? line.quantity : 0),
    0,
  );

const takenFromPack = ({ packs }: Pick<CaseKit, 'packs'>, stockId: StockId): number =>
  packs.reduce((sum, pack) => sum + (pack.stockId === stockId ? pack.quantity : 0), 0);
