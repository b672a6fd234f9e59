/** First in a file, so that office programs read it as UTF-8. */
export const CSV_MARK = '\uFEFF';

/** One line of CSV (RFC 4180). Text that an office program would take for a formula is quoted as text. */
export function csvLine(cells: readonly string[]): string {
  return `${cells.map(csvCell).join(',')}\r\n`;
}

function csvCell(text: string): string {
  const safe = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
