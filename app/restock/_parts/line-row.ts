import type { ProposalLine } from '@/db/queries/restock/proposal';
import { chosenFitWords, modelWords } from '@/lib/wording/restock-screens';

/** A line of a proposal as the table shows it. */
export interface LineRow {
  id: string;
  itemId: string;
  code: string;
  name: string;
  maker: string;
  mustHaveClass: number | null;
  proposed: number;
  packOf: number;
  unitPence: number | null;
  onHand: number;
  onOrder: number;
  committed: number;
  toRefill: number;
  sentence: string;
  established: boolean;
  model: string | null;
  fit: string | null;
  approved: number | null;
  changedBecause: string | null;
}

export function lineRow({ answer, kind, makerId, working, missing, ...line }: ProposalLine): LineRow {
  return {
    ...line,
    established: answer !== null,
    model: modelWords(answer),
    fit: chosenFitWords(answer),
  };
}
