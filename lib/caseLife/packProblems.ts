import type { Problem } from '../identity/result';
import { isPastUseBy, type PlainDate } from '../quantities/plainDate';
import type { StockForm } from '../stock/stock';
import { pickWords as words } from '../wording/case-life';

/** What decides whether single packs of a heap may go to a case. */
export interface PackFacts {
  name: string;
  form: StockForm;
  status: 'current' | 'withdrawn' | 'recalled';
  heldBecause: string | null;
  lot: string | null;
  /** The sooner of what the shelf has on record and what the pack itself says. */
  useBy: PlainDate | null;
  placeName: string | null;
  /** Another case alone that it was let out for before the result of its load was known. */
  letOutFor: { reference: string } | null;
  /** State of our own pouch, where its label was read. */
  pouchState: string | null;
  /** Pieces that lie there and are on no other kit. */
  free: number;
  quantity: number;
  /** The other lot the list names, to be taken instead. */
  instead: { lot: string | null; placeName: string | null } | null;
  case: { reference: string; caseDate: PlainDate };
}

/** Everything that keeps single packs from going to a case, at once, each with the way out. */
export function packProblems(facts: PackFacts): Problem[] {
  const { name, form, status, heldBecause, lot, useBy, free, quantity, instead } = facts;
  const { reference, caseDate } = facts.case;
  const problems: Problem[] = [];
  const add = (code: string, message: string) => problems.push({ path: [], code, message });
  if (status === 'recalled') add('recalled', words.recalled(name));
  if (heldBecause !== null) add('held', words.packHeld(name, lot, heldBecause, instead));
  if (facts.letOutFor) add('let-out-for-another', words.letOutForAnother(name, facts.letOutFor.reference));
  if (form === 'unsterile' || (facts.pouchState !== null && facts.pouchState !== 'sterile'))
    add('not-sterile', words.packNotSterile(name));
  if (useBy !== null && isPastUseBy(useBy, caseDate))
    add('past-use-by', words.packPastUseBy(name, lot, useBy, reference, caseDate, instead));
  if (free < quantity) add('none-left', words.noneLeft(name, free, facts.placeName));
  return problems;
}
