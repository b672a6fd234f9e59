import type { CompletenessInput } from '../calculations/completeness/completeness';
import type { Item } from '../catalogue/item';
import type { ItemId } from '../identity/ids';
import type { ConfigurationLine } from './configuration';
import type { PieceCondition } from './setState';

/** A line of a set's configuration with what was last counted there; `found` is `null` where nobody has counted. */
export interface HeldLine extends ConfigurationLine {
  found: number | null;
  unsound: number;
  condition: PieceCondition;
}

/** Local limits that completeness is judged by; visible settings, never constants of the program. */
export interface SetSettings {
  /** Grams; 7 kg, 10 kg and 25 lb (11.34 kg) until the hospital sets its own. */
  massLimitsGrams: number[];
  warnAtPercent: number;
}
export const DEFAULT_SET_SETTINGS: SetSettings = {
  massLimitsGrams: [7000, 10_000, 11_340],
  warnAtPercent: 90,
};

/**
 * What the `completeness` calculation is asked for one set. Lines are named by the item's name, with their place where
 * two lines hold the same item; items are named by code, so that substitutes are found.
 */
export function completenessInputOf(
  lines: readonly HeldLine[],
  boxes: readonly (ItemId | null)[],
  items: ReadonlyMap<ItemId, Item>,
  settings: SetSettings,
): CompletenessInput {
  const codeOf = (id: ItemId) => items.get(id)?.code ?? id;
  const perItem = new Map<ItemId, number>();
  for (const { itemId } of lines) perItem.set(itemId, (perItem.get(itemId) ?? 0) + 1);
  return {
    lines: lines.map((line) => ({
      line: lineName(line, items.get(line.itemId)?.name ?? line.itemId, (perItem.get(line.itemId) ?? 0) > 1),
      item: codeOf(line.itemId),
      mustHaveClass: line.mustHaveClass,
      expected: line.expected,
      minimum: line.minimum,
      found: line.found,
      massGrams: items.get(line.itemId)?.massGrams ?? null,
      substitutes: line.substitutes.map(codeOf),
    })),
    pouches: [],
    containerGrams: boxGrams(boxes, items),
    massLimitsGrams: settings.massLimitsGrams,
    warnAtPercent: settings.warnAtPercent,
  };
}

/** Mass of basket and container together; `null` when one of them, or its mass, is not stated. */
function boxGrams(boxes: readonly (ItemId | null)[], items: ReadonlyMap<ItemId, Item>): number | null {
  let grams = 0;
  for (const box of boxes) {
    const mass = box === null ? null : (items.get(box)?.massGrams ?? null);
    if (mass === null) return null;
    grams += mass;
  }
  return grams;
}

function lineName(line: ConfigurationLine, name: string, shared: boolean): string {
  const place = shared || name.length > 60 ? ` (${line.layer}/${line.row}/${line.slot})` : '';
  return `${name.slice(0, 60)}${place}`;
}
