/**
 * The check digit of a GS1 key: weights 3 and 1 from the right, to the next multiple of ten.
 *
 * `body` is the digits before the check digit. Source: GS1 General Specifications, modulo-10 check digit.
 */
export function gs1CheckDigit(body: string): number {
  const sum = [...body]
    .reverse()
    .reduce((total, digit, index) => total + Number(digit) * (index % 2 === 0 ? 3 : 1), 0);
  return (10 - (sum % 10)) % 10;
}

/** Whether the last digit of a GS1 key is the check digit of the others. */
export function hasValidCheckDigit(digits: string): boolean {
  return /^\d{2,}$/.test(digits) && gs1CheckDigit(digits.slice(0, -1)) === Number(digits.at(-1));
}
