import { gs1CheckDigit, hasValidCheckDigit } from '@/lib/calculations/identifier/checkDigits';
import type { Problem } from '../identity/result';
import {
  checkBit,
  checkCountersink,
  checkGauge,
  checkHolding,
  checkSide,
  checkSleeve,
  checkWasher,
} from './checks/instrument';
import { type Note, noted } from './checks/note';
import { checkPlate } from './checks/plate';
import { checkScrew } from './checks/screw';
import type { Item } from './item';

/**
 * Everything wrong with an item that its fields show only together: each problem names the field to change, with its path
 * in the item. An item without problems may still have values that nobody has stated.
 */
export function checkItem(item: Item): Problem[] {
  const { problems, note } = noted();
  checkShared(item, note);
  checkSide(item, note);
  switch (item.kind) {
    case 'plate':
      checkPlate(item, note);
      break;
    case 'screw':
      checkScrew(item, note);
      break;
    case 'drillBit':
    case 'guideWire':
      checkBit(item, note);
      break;
    case 'drillSleeve':
      checkSleeve(item, note);
      break;
    case 'washer':
      checkWasher(item, note);
      break;
    case 'countersink':
      checkCountersink(item, note);
      break;
    case 'depthGauge':
      checkGauge(item, note);
      break;
    case 'driver':
    case 'torqueLimiter':
      checkHolding(item, note);
      break;
    default:
      break;
  }
  return problems;
}

function checkShared(item: Item, note: Note): void {
  if (item.gtin !== null && !hasValidCheckDigit(item.gtin)) {
    const due = gs1CheckDigit(item.gtin.slice(0, -1));
    note(
      ['gtin'],
      'gtin-check-digit',
      `The last digit of this GTIN should be ${due}: a digit is wrong or two are swapped.`,
    );
  }
  if (item.use === 'singleUse' && item.reprocessingLimit !== null) {
    note(
      ['reprocessingLimit'],
      'limit-of-single-use',
      'A single-use item is not reprocessed: leave the limit empty.',
    );
  }
}
