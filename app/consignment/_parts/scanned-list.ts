/** What a pack says. */
export interface Scanned {
  code: string;
  lot: string | null;
  pieces: number;
}

const HEADING = 'code;lot;quantity';
const quoted = (cell: string) => (/[;"\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);

/** The list with one more scanned pack: its lot counts on where it was scanned before, else it has a line of its own. */
export function scannedInto(text: string, { code, lot, pieces }: Scanned): string {
  const lines = text.trim() === '' ? [HEADING] : text.replace(/\s+$/, '').split(/\r?\n/);
  const begin = `${quoted(code)};${quoted(lot ?? '')};`;
  const at = lines.findIndex((line) => line.startsWith(begin) && /^\d+$/.test(line.slice(begin.length)));
  if (at === -1) return `${[...lines, `${begin}${pieces}`].join('\n')}\n`;
  const before = Number((lines[at] ?? '').slice(begin.length));
  return `${lines.map((line, index) => (index === at ? `${begin}${before + pieces}` : line)).join('\n')}\n`;
}
