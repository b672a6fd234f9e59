/** `1234 → '1.23 kg'`, `80 → '80 g'`. */
export function writeGrams(grams: number): string {
  return grams >= 1000 ? `${(grams / 1000).toFixed(2)} kg` : `${grams} g`;
}
