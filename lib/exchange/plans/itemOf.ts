import { exchangeRules as words } from '../../wording/exchange-rules';
import { ruleProblem } from '../outcome';
import type { CellProblem, SettledRow } from '../readRows';
import { codeKey } from './catalogue';

/** What lists need to know of an item they name. */
export interface NamedItem {
  id: string;
  code: string;
  name: string;
  gtin: string | null;
  status: 'current' | 'withdrawn' | 'recalled';
  packMultiple: number;
}

/** Finds items by code, or by GTIN where the code is left empty; where both are stated they must agree. */
export function itemFinder(items: readonly NamedItem[]) {
  const byCode = new Map(items.map((item) => [codeKey(item.code), item]));
  const byGtin = new Map(items.map((item) => [item.gtin, item]));
  return ({ row, cells }: SettledRow): { item: NamedItem } | { item: null; problem: CellProblem } => {
    const [code = '', gtin = ''] = [cells.item, cells.gtin];
    const none = (column: string, name: string, sentence: string, value: string | null = null) => ({
      item: null,
      problem: ruleProblem(row, column, name, sentence, value),
    });
    if (code === '' && gtin === '') return none('item', 'needed', words.itemNeeded);
    const item = code === '' ? byGtin.get(gtin) : byCode.get(codeKey(code));
    if (!item)
      return code === ''
        ? none('gtin', 'no-such-gtin', words.noSuchGtin(gtin), gtin)
        : none('item', 'no-such-item', words.noSuchItem(code), code);
    if (code !== '' && gtin !== '' && item.gtin !== gtin)
      return none('gtin', 'code-and-gtin', words.codeAndGtin(item.code, gtin), gtin);
    return { item };
  };
}
