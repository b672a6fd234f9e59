/** Where a flip fell: a row or an index, the ledger's own rows, or room that holds nothing. */
export type Place = 'row' | 'index' | 'ledger' | 'room';

/** One damage and what became of it. */
export interface Damage {
  /** `database`: the hospital's file; `backup`, `sealed`: a backup of it; `description`: what lies beside a backup. */
  of: 'database' | 'backup' | 'sealed' | 'description';
  how: 'bit' | 'torn';
  place: Place;
  /** Whether `verify` said that something is wrong, and `doctor`, which reads less. */
  verify: boolean;
  doctor: boolean;
  /** What was said where a program ended without plain words; `null`: none did. */
  wordless: string | null;
  /** Tables that read differently now; `unreadable`: some cannot be read. Only asked where `verify` was content. */
  differs: readonly string[] | 'unreadable';
}

/** Tables whose every row the ledger's chain, or its audit, rests on. */
const CHAINED = ['ledger', 'ledger_things'];

const NAMES: Record<Damage['of'], string> = {
  database: 'a database',
  backup: 'a backup',
  sealed: 'a sealed backup',
  description: 'what describes a backup',
};

/** What must not be: damage of a backup or of the ledger that is not found, or that ends without words. */
export function bitFaults(all: readonly Damage[]): string[] {
  const faults = new Map<string, number>();
  const add = (text: string) => faults.set(text, (faults.get(text) ?? 0) + 1);
  for (const one of all) {
    if (one.wordless !== null) add(`damage was answered without plain words: ${one.wordless}`);
    if (one.verify) continue;
    if (one.of !== 'database') add(`damage of ${NAMES[one.of]} was not found`);
    if (one.differs === 'unreadable') add('a database that cannot be read was called whole');
    else
      for (const table of one.differs) if (CHAINED.includes(table)) add(`a change in ${table} was not found`);
  }
  return [...faults].map(([text, count]) => (count === 1 ? text : `${text} (${count} times)`));
}

const share = (part: number, all: number) =>
  all === 0 ? '–' : `${part} of ${all} (${((100 * part) / all).toFixed(0)} %)`;

/** What was found and what was not, as shares. */
export function bitShares(all: readonly Damage[]): string[] {
  const lines: string[] = [];
  for (const of of ['database', 'backup', 'sealed', 'description'] as const) {
    for (const how of ['bit', 'torn'] as const) {
      const these = all.filter((one) => one.of === of && one.how === how);
      if (these.length === 0) continue;
      const what = `${how === 'bit' ? 'single bits' : 'torn pages'} of ${NAMES[of]}`;
      const found = these.filter(({ verify }) => verify).length;
      const byDoctor = these.filter(({ doctor }) => doctor).length;
      if (of !== 'database') {
        lines.push(`${what}: verify found ${share(found, these.length)}`);
        continue;
      }
      const unnoticed = these.filter(({ verify, differs }) => !verify && differs.length > 0);
      const harmless = these.length - found - unnoticed.length;
      lines.push(
        `${what}: verify found ${share(found, these.length)}, doctor ${share(byDoctor, these.length)}; ${share(harmless, these.length)} changed nothing that is read; ${share(unnoticed.length, these.length)} changed a value that no check rests on${tablesOf(unnoticed)}`,
      );
      for (const place of ['row', 'index', 'ledger', 'room'] as const) {
        const here = these.filter((one) => one.place === place);
        if (here.length > 0)
          lines.push(
            `  in ${place === 'room' ? 'room that holds nothing' : place === 'ledger' ? 'the ledger' : place === 'row' ? 'rows' : 'indexes'}: found ${share(here.filter(({ verify }) => verify).length, here.length)}`,
          );
      }
    }
  }
  return lines;
}

function tablesOf(unnoticed: readonly Damage[]): string {
  const counts = new Map<string, number>();
  for (const { differs } of unnoticed)
    if (differs !== 'unreadable')
      for (const table of differs) counts.set(table, (counts.get(table) ?? 0) + 1);
  const most = [...counts].sort((one, other) => other[1] - one[1]).slice(0, 5);
  return most.length === 0
    ? ''
    : `, most in ${most.map(([table, count]) => `${table} (${count})`).join(', ')}`;
}
