import { heldBecause } from '../../sets/setState';
import { stockHold } from '../../stock/hold';
import { FORM_WORDS, heldWords, OWNER_WORDS } from '../../wording/stock';
import type { ListColumn, ListInfo } from '../list';
import { column } from './column';

const wordsOf = (reasons: readonly string[]) =>
  Object.fromEntries(reasons.map((reason) => [reason, heldWords(reason)]));
const ITEM_HEADINGS = ['Item code', 'Catalogue number', 'Cat no', 'Product code', 'Code'];

const item = column('item', 'Item', 'code', 'The code of the item; or leave it empty and state its GTIN.', {
  example: 'EX-35-020',
  also: ITEM_HEADINGS,
});
const gtin = column('gtin', 'GTIN', 'gtin', 'Of the item, where its code is left empty. Fourteen digits.', {
  also: ['Barcode', 'EAN', 'UDI-DI'],
});
const lot = column('lot', 'Lot', 'lot', 'As the pack has it; the word none where the pack states none.', {
  required: true,
  none: true,
  example: 'L2401A',
  also: ['Lot number', 'Lot no', 'LOT'],
});
const useBy = column('useBy', 'Use-by', 'date', 'The day on the pack; the word none where it states none.', {
  required: true,
  none: true,
  example: '2027-05-31',
  also: ['Use by date', 'Expiry', 'Expiry date', 'Exp', 'Best before'],
});
const owner = column('owner', 'Owner', 'choice', 'Ours, or on consignment.', {
  words: OWNER_WORDS,
  required: true,
  example: 'ours',
});
const place = column('place', 'Place', 'text', 'Where it lies, by the name it has under Places.', {
  required: true,
  example: 'Implant store',
  also: ['Location', 'Shelf', 'Bin'],
});
const held = (reasons: readonly string[]) =>
  column('held', 'Held because', 'choice', 'Empty: it is not held.', { words: wordsOf(reasons) });
const form = (words: Readonly<Record<string, string>>): ListColumn =>
  column('form', 'Form', 'choice', 'As it lies there.', {
    words,
    required: true,
    example: words.sterilePacked ?? '',
  });

const { pouch: _ours, ...DELIVERED_FORMS } = FORM_WORDS;

export const stockList: ListInfo = {
  kind: 'stock',
  name: 'Stock as counted',
  rowIs: 'One heap: pieces of one item, form, lot, use-by, owner and place.',
  does: 'Where the figure differs, the record is corrected for the reason you choose, and the journal says so. Heaps the file does not name stay as they are.',
  columns: [
    item,
    gtin,
    form(FORM_WORDS),
    lot,
    useBy,
    owner,
    place,
    held([...heldBecause.options, ...stockHold.options]),
    column('pieces', 'Pieces', 'whole', 'How many lie there now.', {
      required: true,
      example: '12',
      also: ['Quantity', 'Qty', 'Count', 'On hand', 'Stock'],
    }),
  ],
  partialBy: null,
  bringIn: 'adjustStock',
  takeOut: 'readHospital',
};

export const deliveriesList: ListInfo = {
  kind: 'deliveries',
  name: 'Deliveries',
  rowIs: 'One line of a delivery note. Rows of the same supplier and number are one delivery.',
  does: 'Each delivery is received as on its screen: what it brought is put on its shelf. One that was received before stays as it is.',
  columns: [
    column('supplier', 'Supplier', 'text', 'Who sent it.', {
      required: true,
      example: 'Carrowby Implants',
      also: ['Vendor', 'From'],
    }),
    column('reference', 'Delivery note', 'code', 'The number on the delivery note.', {
      required: true,
      example: 'DN-1001',
      also: ['Delivery note number', 'Note number', 'Reference'],
    }),
    column('arrivedOn', 'Arrived on', 'date', 'The day it came.', {
      required: true,
      example: '2026-01-12',
      also: ['Date', 'Delivered', 'Received on', 'Delivery date'],
    }),
    item,
    gtin,
    form(DELIVERED_FORMS),
    lot,
    useBy,
    column('count', 'Count', 'whole', 'How many packs, or pieces.', {
      required: true,
      example: '5',
      also: ['Quantity', 'Qty'],
    }),
    column('unit', 'Unit', 'choice', 'What is counted.', {
      words: { packs: 'packs', pieces: 'pieces' },
      required: true,
      example: 'pieces',
    }),
    owner,
    place,
    held(stockHold.options),
  ],
  partialBy: null,
  bringIn: 'receiveStock',
  takeOut: 'readHospital',
};
