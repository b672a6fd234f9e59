import type { StockForm } from '../stock/stock';
import { FORM_WORDS } from './stock';

/** Where the nearest spare lies, in a few words. */
export function spareWords(spare: {
  place: string;
  metres: number;
  form: StockForm;
  quantity: number;
}): string {
  return `${spare.place}, ${spare.metres} m: ${spare.quantity}, ${FORM_WORDS[spare.form]}`;
}

export const surplusWords = (code: string, over: number): string => `${code} holds ${over} too many`;
