import { z } from 'zod';
import type { ReceivedItem } from '@/db/queries/shelf/receiving';
import type { StockHold } from '@/lib/stock/hold';
import { typedUseBy } from '@/lib/stock/useByTyped';

/** A line as it stands on the screen: text as typed, nothing chosen that nobody chose. */
export interface DraftLine {
  id: string;
  item: ReceivedItem;
  form: 'sterilePacked' | 'unsterile' | null;
  lot: string;
  /** The pack carries none. */
  noLot: boolean;
  useBy: string;
  noUseBy: boolean;
  count: string;
  unit: 'packs' | 'pieces';
  placeId: string;
  held: StockHold | '';
  useByReadAgain: boolean;
  /** The line of an order it is counted to; empty: to none. */
  orderLineId: string;
  scanId: string | null;
}

/** A delivery as it stands on the screen, kept in this browser until it is received. */
export interface Draft {
  id: string;
  supplier: string;
  reference: string;
  arrivedOn: string;
  owner: 'ours' | 'consignment';
  /** Whose, where it is on consignment; empty: the note does not say. */
  lenderId: string;
  placeId: string;
  lines: DraftLine[];
}

/** Enough to know that what was kept here is a draft of this screen. */
export const keptDraft = z.looseObject({
  id: z.string().startsWith('delivery_'),
  supplier: z.string(),
  reference: z.string(),
  arrivedOn: z.string(),
  owner: z.enum(['ours', 'consignment']),
  // drafts kept before owners were named have none
  lenderId: z.string().default(''),
  placeId: z.string(),
  lines: z.array(
    z.looseObject({
      id: z.string().startsWith('deliveryLine_'),
      item: z.looseObject({
        itemId: z.string(),
        name: z.string(),
        code: z.string(),
        packMultiple: z.number(),
        places: z.array(z.looseObject({})),
        alike: z.array(z.looseObject({})),
      }),
      lot: z.string(),
      useBy: z.string(),
      count: z.string(),
      unit: z.enum(['packs', 'pieces']),
    }),
  ),
});

/** What the server is sent; a field nobody filled is sent as it is, and the server names it. */
export const sentOf = ({ id, supplier, reference, arrivedOn, owner, lenderId, lines }: Draft) => ({
  id,
  supplier,
  reference,
  arrivedOn,
  lines: lines.map((line) => ({
    id: line.id,
    itemId: line.item.itemId,
    form: line.form,
    lot: line.noLot ? null : line.lot.trim(),
    useBy: line.noUseBy ? null : (typedUseBy(line.useBy) ?? line.useBy.trim()),
    count: /^\d{1,4}$/.test(line.count.trim()) ? Number(line.count.trim()) : 0,
    unit: line.unit,
    placeId: line.placeId,
    owner,
    lenderId: owner === 'ours' || lenderId === '' ? null : lenderId,
    held: line.held === '' ? null : line.held,
    useByReadAgain: line.useByReadAgain,
    // drafts kept before orders were offered name none
    orderLineId: line.orderLineId || null,
    scanId: line.scanId,
  })),
});

/** Where more of an item is put unless somebody says otherwise: where it lies already in that form. */
export const usualPlace = (item: ReceivedItem, form: DraftLine['form']): string =>
  (item.places.find((place) => place.form === form) ?? item.places[0])?.id ?? '';

/** Pieces of a line, as far as they can be told. */
export const piecesOfDraft = ({ count, unit, item }: DraftLine): number =>
  (/^\d{1,4}$/.test(count.trim()) ? Number(count.trim()) : 0) * (unit === 'packs' ? item.packMultiple : 1);
