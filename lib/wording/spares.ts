import type { StockForm } from '../stock/stock';
import { FORM_WORDS } from './stock';

/** Where the nearest spare lies, in a few words. */
export function spareWords(spare: {
  place: string;
  metres: number;
  form: StockForm;
  /** `null`: the reader counts it now, without seeing the record. */
  quantity: number | null;
}): string {
  return `${spare.place}, ${spare.metres} m: ${spare.quantity ?? 'some, which you count now'}, ${FORM_WORDS[spare.form]}`;
}

export const surplusWords = (code: string, over: number): string => `${code} holds ${over} too many`;
