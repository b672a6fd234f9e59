import type { WorkingStep } from '@/lib/calculations/calculation';
import { reorder } from '@/lib/calculations/reorder/reorder';
import type { ReorderInput, ReorderOutput } from '@/lib/calculations/reorder/schema';
import type { ItemId } from '@/lib/identity/ids';
import { isPastUseBy, type PlainDate } from '@/lib/quantities/plainDate';
import type { MustHaveClass } from '@/lib/sets/configuration';
import type { SettingValue } from '@/lib/settings/local';
import { consignmentNotes, restockWords } from '@/lib/wording/restock';
import { daysBetween } from './days';
import type { UseRecord } from './record';
import type { TermsInForce } from './terms';

/** One item of the shelf, with all that decides whether more of it is ordered. */
export interface ItemToRestock {
  itemId: ItemId;
  makerId: string;
  packOf: number;
  unitPence: number | null;
  /** The strictest of its lines in sets in service; `null`: in no set. */
  mustHaveClass: MustHaveClass | null;
  terms: TermsInForce;
  record: UseRecord;
  /** Pieces on the shelf that can be used, by use-by. */
  heaps: readonly { pieces: number; useBy: PlainDate | null }[];
  onOrder: number;
  /** What their owner was asked to replace and has not, by usage order: it comes, and is not bought. */
  toReplace: readonly { number: string; pieces: number }[];
  /** Used pieces of an owner's that no usage order has yet. */
  usedWaiting: number;
  /** What confirmed plans of booked cases take, by the day of the case. */
  committed: readonly { pieces: number; caseDate: PlainDate }[];
  /** What slots of sets lack now. */
  toRefill: number;
}

/** What is proposed of one item. */
export interface ProposedLine {
  item: ItemToRestock;
  /** What the calculation was asked. */
  input: ReorderInput;
  order: number;
  /** What would be bought were it not kept on consignment; its owner is to be asked for it. */
  lacking: number;
  /** Why, in one sentence. */
  sentence: string;
  /** `null`: how much to keep is not established; what is ordered then is only what is promised and not there. */
  answer: ReorderOutput | null;
  missing: readonly string[];
  working: readonly WorkingStep[];
}

/** Works out what to order of one item, as of `today`. */
export function proposeFor(
  item: ItemToRestock,
  today: PlainDate,
  settings: Pick<SettingValue<'restock'>, 'sureOfUsePercent' | 'alphaPercent'>,
): ProposedLine {
  const bought = proposeToBuy(item, today, settings);
  const { toReplace, usedWaiting, terms } = item;
  const note = consignmentNotes.replaced(toReplace, usedWaiting);
  if (!terms.consigned) return { ...bought, sentence: `${bought.sentence}${note}` };
  const lacking = bought.order;
  return { ...bought, order: 0, lacking, sentence: `${consignmentNotes.neverBought(lacking)}${note}` };
}

/** As if all of it were bought. */
function proposeToBuy(
  item: ItemToRestock,
  today: PlainDate,
  settings: Pick<SettingValue<'restock'>, 'sureOfUsePercent' | 'alphaPercent'>,
): ProposedLine {
  const input = inputFor(item, today, settings);
  const said = reorder(input);
  if (said.outcome === 'answered') {
    const { order, sentence } = said.answer;
    return {
      item,
      input,
      order,
      lacking: 0,
      sentence,
      answer: said.answer,
      missing: [],
      working: said.working,
    };
  }
  const missing = said.missing.map(({ what }) => what);
  const good = input.lots.reduce((sum, { pieces }) => sum + pieces, 0);
  const lacking = Math.max(0, input.committed + input.toRefill - good - input.onOrder);
  const order = Math.ceil(lacking / item.packOf) * item.packOf;
  const sentence = restockWords.onlyPromised({ missing, order, lacking, packOf: item.packOf, good, input });
  return { item, input, order, lacking: 0, sentence, answer: null, missing, working: [] };
}

/** What the calculation is asked; what is not established of the item is left so. */
function inputFor(
  item: ItemToRestock,
  today: PlainDate,
  settings: Pick<SettingValue<'restock'>, 'sureOfUsePercent' | 'alphaPercent'>,
): ReorderInput {
  const { terms, record } = item;
  // of a lead nobody knows the whole horizon counts: what is promised is promised
  const until = terms.leadDays === null ? Number.POSITIVE_INFINITY : terms.leadDays + terms.reviewDays;
  return {
    demand: {
      kind: 'record',
      days: Math.max(1, record.days),
      uses: [...record.uses],
      alpha: settings.alphaPercent / 100,
    },
    leadDays: terms.leadDays,
    leadSdDays: terms.leadSdDays,
    reviewDays: terms.reviewDays,
    service: terms.service,
    lots: item.heaps
      .filter(({ useBy }) => useBy === null || !isPastUseBy(useBy, today))
      .map(({ pieces, useBy }) => ({ pieces, daysLeft: useBy === null ? null : daysBetween(today, useBy) })),
    // what their owner replaces comes like what was ordered
    onOrder: item.onOrder + item.toReplace.reduce((sum, { pieces }) => sum + pieces, 0),
    committed: item.committed
      .filter(({ caseDate }) => daysBetween(today, caseDate) <= until)
      .reduce((sum, { pieces }) => sum + pieces, 0),
    toRefill: item.toRefill,
    packOf: item.packOf,
    shelfLifeDays: terms.shelfLifeDays,
    sureOfUse: settings.sureOfUsePercent / 100,
  };
}

/** Whether a line is worth a person's look: something is ordered, or what there is to know of a piece in use is lacking. */
export function isWorthALook({ order, lacking, answer, item }: ProposedLine): boolean {
  return order > 0 || lacking > 0 || (answer === null && item.record.uses.length > 0);
}
