const COLUMN_WORDS: Record<string, string> = { code: 'code', gtin: 'GTIN', lot: 'lot', pieces: 'quantity' };

/** What can be wrong with an owner's list, cell by cell, and the way out. */
export const ownersListWords = {
  empty: 'There is nothing in it.',
  noHeading:
    'The first line must be a heading that names a quantity, a lot, and a code or a GTIN, separated by commas, semicolons or tabs.',
  noLines: 'There is a heading and no line under it.',
  tooManyLines: (most: number) => `At most ${most} lines.`,
  twice: (heading: string) => `“${heading}” is there twice: which one counts?`,
  quoteOpen: (line: number) => `Line ${line}: a quotation mark is opened and never closed.`,
  at: (line: number, column: string, message: string) =>
    `Line ${line}, ${COLUMN_WORDS[column] ?? column}: ${message}`,
  twoItems: (byGtin: string, byCode: string) =>
    `the GTIN is ${byGtin}, and the code is ${byCode}. Ask the owner which it is.`,
  notInCatalogue: (said: string) => `“${said}” is nothing in the catalogue.`,
  noItem: 'neither a code nor a GTIN is stated.',
  lotTooLong: (most: number) => `at most ${most} characters.`,
  notStated: 'no quantity is stated. If there is none, say 0.',
  twoReadings: (said: string) => `“${said}” can be a thousand or a decimal. Write it without a sign.`,
  notWhole: (said: string, most: number) => `“${said}” is no whole number of pieces up to ${most}.`,
  notAGtin: (said: string) => `“${said}” is no GTIN: it has 8, 12, 13 or 14 digits.`,
  wrongCheckDigit: (said: string) => `the check digit of “${said}” is wrong: read it again.`,
};
