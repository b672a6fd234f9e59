import { gs1CheckDigit } from '../checkDigits';
import type { Fault, Meaning, Reading } from '../reading';

const KINDS: Readonly<Record<number, { name: string; meaning: Meaning; digits: number }>> = {
  8: { name: 'GTIN-8', meaning: 'gtin', digits: 14 },
  12: { name: 'GTIN-12', meaning: 'gtin', digits: 14 },
  13: { name: 'GTIN-13', meaning: 'gtin', digits: 14 },
  14: { name: 'GTIN-14', meaning: 'gtin', digits: 14 },
  18: { name: 'SSCC', meaning: 'logisticUnit', digits: 18 },
};

/**
 * The digits of a GS1 key with no identifier before them, as EAN-13 and ITF-14 carry them and people type them. `null`
 * where the text is not of the length of one. A GTIN is read as fourteen digits.
 */
export function readBareKey(text: string, position: number): Reading | null {
  const kind = /^\d+$/.test(text) ? KINDS[text.length] : undefined;
  if (!kind) return null;
  const { name, meaning, digits } = kind;
  const [given, due] = [text.slice(-1), String(gs1CheckDigit(text.slice(0, -1)))];
  const faults: Fault[] =
    given === due ? [] : [{ kind: 'check-digit', name, given, due, position: position + text.length - 1 }];
  const plain = faults.length > 0 ? null : text.padStart(digits, '0');
  return { elements: [{ identifier: null, name, value: text, meaning, plain, position }], faults };
}
