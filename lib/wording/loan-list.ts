const COLUMN_WORDS: Record<string, string> = {
  tray: 'tray',
  code: 'code',
  gtin: 'GTIN',
  name: 'name',
  quantity: 'quantity',
  implant: 'implant',
  mustHaveClass: 'class',
};

/** What can be wrong with a lender's content list, at its line and column, and the way out. */
export const loanListWords = {
  empty: 'The file is empty.',
  noLines: 'Under the heading there is no line.',
  noHeading:
    'No heading names a quantity and a name or a code. Write one in the first line, such as: tray, code, GTIN, name, quantity, implant, class.',
  twice: (heading: string) => `Two columns are headed “${heading}”: which one counts is not established.`,
  quoteOpen: (line: number) => `A quotation mark is opened in line ${line} and never closed.`,
  tooManyLines: (most: number) => `More than ${most} lines: split the list by tray.`,
  at: (line: number, column: string, message: string) =>
    `Line ${line}, ${COLUMN_WORDS[column] ?? column}: ${message}`,
  noName: 'neither a name nor a code: say what it is.',
  nameTooLong: (most: number) => `longer than ${most} characters.`,
  notANumber: (said: string, most: number) =>
    said === ''
      ? `not stated; a whole number from 1 to ${most} is needed.`
      : `“${said}” is no whole number from 1 to ${most}.`,
  notAGtin: (said: string) => `“${said}” is no GTIN: those have 8, 12, 13 or 14 digits.`,
  wrongCheckDigit: (said: string) =>
    `the last digit of ${said} does not follow from the others: it was misread or mistyped.`,
  twoItems: (byGtin: string, byCode: string) =>
    `the GTIN is ${byGtin}, the code is ${byCode}: one of them is wrong.`,
  implantNotAsKnown: (name: string, implant: boolean) =>
    `the catalogue has ${name} as ${implant ? 'an implant' : 'no implant'}.`,
  notYesOrNo: (said: string) => `“${said}” is neither yes nor no.`,
  trayWithoutLines: (tray: number) => `Tray ${tray} has no line: trays are numbered from 1 without a gap.`,
};
