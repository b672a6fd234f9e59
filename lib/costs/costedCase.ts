import { caseCost } from '../calculations/caseCost/caseCost';
import {
  type CaseCostInput,
  type CaseCostOutput,
  caseCostInput,
  type WasteReason,
} from '../calculations/caseCost/schema';
import type { PlainDate } from '../quantities/plainDate';

/** Pieces of one item that were implanted or wasted in a case. */
export interface UsedPieces {
  item: string;
  quantity: number;
  unitPence: number | null;
  /** `null`: implanted. `reasonId`: the hospital's own reason; `null`: not stated. */
  wasted: { why: WasteReason; code: string; reasonId: string | null } | null;
  /** The configuration of the set it came from; `null`: a single pack. */
  configurationId: string | null;
}

/** A case that is over, with everything its cost is made of. */
export interface CaseFacts {
  caseId: string;
  reference: string;
  on: PlainDate;
  region: string;
  procedure: string | null;
  surgeonId: string;
  /** Sets that were in it, by configuration. */
  sets: readonly { configurationId: string; loan: boolean }[];
  used: readonly UsedPieces[];
  /** Pouches opened, and what was used once and stays in no patient. */
  pouches: number;
  singleUse: readonly { item: string; quantity: number; unitPence: number | null }[];
}

export interface CostedCase extends CaseFacts {
  input: CaseCostInput;
  cost: CaseCostOutput;
  /** Every price is known; otherwise the cost is at least this. */
  whole: boolean;
}

/** What the hospital has stated. */
export interface Rates {
  trayPence: number | null;
  pouchPence: number | null;
  wasteShareOf: CaseCostInput['wasteShareOf'];
}

/** Works out what a case cost, by the one calculation there is for it. */
export function costedCase(facts: CaseFacts, rates: Rates): CostedCase {
  const loans = facts.sets.filter(({ loan }) => loan).length;
  const priced = ({ item, quantity, unitPence }: UsedPieces) => ({ item, quantity, unitPence });
  const input = caseCostInput.parse({
    implanted: facts.used.filter(({ wasted }) => wasted === null).map(priced),
    wasted: facts.used.flatMap((one) =>
      one.wasted === null ? [] : [{ ...priced(one), why: one.wasted.why }],
    ),
    trays:
      facts.sets.length === 0
        ? []
        : [{ item: 'turn of a set', quantity: facts.sets.length, unitPence: rates.trayPence }],
    pouches:
      facts.pouches === 0 ? [] : [{ item: 'pouch', quantity: facts.pouches, unitPence: rates.pouchPence }],
    singleUse: facts.singleUse,
    // what a lender asks for is not kept
    loans: loans === 0 ? [] : [{ item: 'loan set', quantity: loans, unitPence: null }],
    wasteShareOf: rates.wasteShareOf,
  });
  const said = caseCost(input);
  const cost = said.outcome === 'answered' ? said.answer : said.known;
  if (!cost) throw new Error('what is known of a cost is always told');
  return { ...facts, input, cost, whole: said.outcome === 'answered' };
}

const WHY: Readonly<Record<string, WasteReason>> = {
  otherLength: 'openedNotImplanted',
  openedNotImplanted: 'openedNotImplanted',
  dropped: 'droppedOrDamaged',
  damaged: 'droppedOrDamaged',
  droppedOrDamaged: 'droppedOrDamaged',
  packDamaged: 'droppedOrDamaged',
  pastUseBy: 'pastUseBy',
};

/** Reasons are codes of the program or words of the hospital’s own; without one, a piece was opened and not implanted. */
export const whyWasted = (code: string | null): WasteReason =>
  code === null ? 'openedNotImplanted' : (WHY[code] ?? 'other');
