import { groupBy } from '../../lists/groupBy';
import type { AdjustReason } from '../../stock/adjustment';
import { ADJUSTMENTS } from '../../stock/adjustment';
import type { StockForm } from '../../stock/stock';
import { type TakenFrom, takingProblems } from '../../stock/taking';
import { exchangeRules as words } from '../../wording/exchange-rules';
import { NONE } from '../list';
import { type Planned, type RowOutcome, ruleProblem } from '../outcome';
import type { CellProblem, SettledRow } from '../readRows';
import { codeKey } from './catalogue';
import { itemFinder, type NamedItem } from './itemOf';

/** One heap on record with what decides what may be taken off it. */
export interface HeapOnRecord extends Omit<TakenFrom, 'row'> {
  id: string;
  itemId: string;
  form: StockForm;
  lot: string | null;
  useBy: string | null;
  owner: 'ours' | 'consignment';
  placeId: string;
  heldBecause: string | null;
  quantity: number;
  revision: number;
}

export interface StockFacts {
  items: readonly NamedItem[];
  places: readonly { id: string; name: string; inUse: boolean }[];
  heaps: readonly HeapOnRecord[];
  lotUnderRecall: (itemId: string, lot: string | null) => boolean;
  /** Heaps that whoever asks is counting blind. */
  countedBlind: ReadonlySet<string>;
}

/** Why figures that differ are corrected, as a person chose for the whole file. */
export interface StockChoices {
  more: Extract<AdjustReason, 'found' | 'enteredTooFew'> | null;
  fewer: Extract<AdjustReason, 'notFound' | 'enteredTooMany'> | null;
  note: string;
}

/** A correction of one heap; `heap` of a new one instead of an id. */
export interface StockWork {
  itemId: string;
  form: StockForm;
  lot: string | null;
  useBy: string | null;
  owner: 'ours' | 'consignment';
  placeId: string;
  difference: number;
  reason: AdjustReason | null;
}

const MOST_PIECES = 99_999;

/** What makes two rows or heaps the same one. */
const keyOf = (one: Omit<StockWork, 'difference' | 'reason'>, held: string | null) =>
  [one.itemId, one.form, one.lot ?? NONE, one.useBy ?? NONE, one.owner, one.placeId, held ?? ''].join('\n');

const orNone = (text: string | undefined): string | null =>
  text === NONE || text === undefined ? null : text;

/** What correcting the record to the counted figures of the file would do, heap by heap. */
export function planStock(
  rows: readonly SettledRow[],
  facts: StockFacts,
  choices: StockChoices,
): Planned<StockWork> {
  const find = itemFinder(facts.items);
  const places = new Map(
    facts.places.filter(({ inUse }) => inUse).map((place) => [codeKey(place.name), place]),
  );
  const heaps = groupBy(facts.heaps, (heap) => keyOf(heap, heap.heldBecause));
  const outcomes: RowOutcome<StockWork>[] = [];
  const problems: CellProblem[] = [];
  const read = rows.flatMap((settled) => {
    const { row, cells } = settled;
    const found = find(settled);
    const place = places.get(codeKey(cells.place ?? ''));
    if (found.item === null) problems.push(found.problem);
    if (!place && (cells.place ?? '') !== '')
      problems.push(
        ruleProblem(row, 'place', 'no-such-place', words.noSuchPlace(cells.place ?? ''), cells.place),
      );
    if (found.item === null || !place || !isWhole(cells)) return [];
    const kind = {
      itemId: found.item.id,
      form: cells.form as StockForm,
      lot: orNone(cells.lot),
      useBy: orNone(cells.useBy),
      owner: cells.owner as 'ours' | 'consignment',
      placeId: place.id,
    };
    const held = cells.held || null;
    const name = `${found.item.code}, ${kind.lot === null ? 'no lot' : `lot ${kind.lot}`}, ${place.name}`;
    return [{ row, kind, held, name, pieces: Number(cells.pieces), key: keyOf(kind, held) }];
  });
  const same = groupBy(read, ({ key }) => key);
  for (const { row, kind, held, name, pieces, key } of read) {
    const alike = (same.get(key) ?? []).map((one) => one.row);
    const there = heaps.get(key) ?? [];
    const add = (column: string | null, code: string, sentence: string) =>
      problems.push(ruleProblem(row, column, code, sentence));
    if (alike.length > 1) {
      add(null, 'twice', words.twice(name, alike));
      continue;
    }
    if (pieces < 0 || pieces > MOST_PIECES) {
      add('pieces', 'out-of-bounds', words.outOfBounds(0, MOST_PIECES));
      continue;
    }
    const [heap] = there;
    const recorded = there.reduce((sum, { quantity }) => sum + quantity, 0);
    const difference = pieces - recorded;
    if (difference !== 0) {
      const before = problems.length;
      if (there.length > 1) add('pieces', 'several-heaps', words.severalHeaps);
      else if (heap && facts.countedBlind.has(heap.id)) add('pieces', 'counted-now', words.countedNow);
      else if (heap && difference < 0)
        for (const { code, message } of takingProblems({ ...heap, row: heap }, -difference))
          add('pieces', code, message);
      else if (!heap && kind.form === 'pouch') add('form', 'pouch', words.pouchNotHere);
      else if (!heap && held !== null) add('held', 'held-not-here', words.heldNotHere);
      else if (!heap && facts.lotUnderRecall(kind.itemId, kind.lot))
        add('lot', 'lot-recalled', words.lotRecalled(kind.lot));
      if (problems.length > before) continue;
    }
    outcomes.push({
      rows: [row],
      kind: difference === 0 ? 'unchanged' : heap ? 'changed' : 'new',
      name,
      id: heap?.id ?? null,
      revision: heap?.revision ?? null,
      changes: difference === 0 ? [] : [{ column: 'pieces', from: String(recorded), to: String(pieces) }],
      remarks: heap || difference === 0 ? [] : [words.newHeap],
      work: {
        ...kind,
        difference,
        reason: difference > 0 ? choices.more : difference < 0 ? choices.fewer : null,
      },
    });
  }
  return { outcomes, problems: [...problems, ...reasonProblems(outcomes, choices)] };
}

/** Cells without which a heap can't be told; their own problems were told as the row was read. */
const isWhole = (cells: SettledRow['cells']) =>
  ['form', 'lot', 'useBy', 'owner', 'pieces'].every((key) => (cells[key] ?? '') !== '');

/** A correction without its reason is none; one that was entered wrongly says how it came about. */
function reasonProblems(outcomes: readonly RowOutcome<StockWork>[], { note }: StockChoices): CellProblem[] {
  const corrected = outcomes.filter(({ kind }) => kind !== 'unchanged');
  const whole = (code: string, sentence: string): CellProblem => ({
    row: null,
    column: 'pieces',
    value: null,
    code,
    fault: null,
    sentence,
  });
  if (corrected.some(({ work }) => work.reason === null)) return [whole('reason-needed', words.reasonNeeded)];
  const needsNote = corrected.some(({ work }) => work.reason !== null && ADJUSTMENTS[work.reason].needsNote);
  return needsNote && note.trim() === '' ? [whole('note-needed', words.noteNeeded)] : [];
}
