import { never } from '../identity/result';
import type { AsideRoute, BenchAct, BenchEntry, Fault, Home, RefillSource } from './act';

export interface AsidePieces {
  condition: Fault;
  route: AsideRoute;
  pieces: number;
}

export interface RefillOfLine {
  entryId: string;
  pieces: number;
  from: RefillSource;
  secondPersonId: string | null;
}

/**
 * What one count says of one line. Once it is counted, pieces are kept: what lay there and what was put in is what is
 * found, put aside and taken home (`there + refilled = found + aside + takenHome`).
 */
export interface LineState {
  /** Fit pieces in the slot now; `null` until somebody has counted it. */
  found: number | null;
  /** Pieces that lay there as the count came to the line, fit or not; what two counters must agree on. */
  there: number | null;
  aside: AsidePieces[];
  refills: RefillOfLine[];
  takenHome: { pieces: number; home: Home }[];
  /** The last act on it. */
  at: string;
  lastEntryId: string;
}

export interface ForeignState {
  found: number;
  takenHome: { pieces: number; home: Home }[];
  note: string | null;
}

export interface CountState {
  lines: ReadonlyMap<string, LineState>;
  foreign: ReadonlyMap<string, ForeignState>;
  /** Layers looked over as a whole. */
  looked: ReadonlySet<number>;
  /** Serial numbers counted, with the moment: `line serial → at`. */
  serials: ReadonlyMap<string, string>;
  notes: { text: string; at: string }[];
  /** Entries that stand, in order: neither undone nor an undoing. */
  standing: BenchEntry[];
}

const sum = (rows: readonly { pieces: number }[]) => rows.reduce((total, { pieces }) => total + pieces, 0);
export const asideOf = (line: LineState) => sum(line.aside);
export const refilledOf = (line: LineState) => sum(line.refills);
export const takenHomeOf = (line: LineState) => sum(line.takenHome);
export const serialKey = (lineId: string, serial: string) => `${lineId} ${serial}`;

/** Entries in the order they were done, each once. Whatever order they arrived in, and however often, this is the same. */
export function inOrder(entries: Iterable<BenchEntry>): BenchEntry[] {
  const once = new Map<string, BenchEntry>();
  for (const entry of entries) once.set(entry.id, entry);
  return [...once.values()].sort((a, b) => compare(a.doneAt, b.doneAt) || compare(a.id, b.id));
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/** What the entries of one count come to. */
export function stateOf(entries: Iterable<BenchEntry>): CountState {
  const all = inOrder(entries);
  const undone = new Set(all.flatMap(({ act }) => (act.kind === 'undo' ? [act.entryId as string] : [])));
  const standing = all.filter(({ id, act }) => act.kind !== 'undo' && !undone.has(id));
  const making = new Making();
  for (const entry of standing) making.apply(entry);
  return { ...making, standing };
}

class Making {
  readonly lines = new Map<string, LineState>();
  readonly foreign = new Map<string, ForeignState>();
  readonly looked = new Set<number>();
  readonly serials = new Map<string, string>();
  readonly notes: { text: string; at: string }[] = [];

  apply(entry: BenchEntry): void {
    const { act, doneAt: at } = entry;
    switch (act.kind) {
      case 'looked':
        this.looked.add(act.layer);
        return;
      case 'note':
        this.notes.push({ text: act.text, at });
        return;
      case 'foreign': {
        const before = this.foreignOf(act.itemId);
        this.foreign.set(act.itemId, {
          ...before,
          found: before.found + act.pieces,
          note: act.note ?? before.note,
        });
        return;
      }
      case 'foreignHome': {
        const before = this.foreignOf(act.itemId);
        const takenHome = [...before.takenHome, { pieces: act.pieces, home: act.home }];
        this.foreign.set(act.itemId, { ...before, takenHome });
        return;
      }
      case 'undo':
        return;
      default:
        this.applyToLine(act, entry);
    }
  }

  private applyToLine(act: Extract<BenchAct, { lineId: string }>, entry: BenchEntry): void {
    if (act.kind === 'oneMore' && act.serial !== null) {
      const key = serialKey(act.lineId, act.serial);
      if (this.serials.has(key)) return;
      this.serials.set(key, entry.doneAt);
    }
    const before = this.lines.get(act.lineId) ?? NOT_COUNTED;
    const after = { ...lineAfter(before, act, entry), at: entry.doneAt, lastEntryId: entry.id };
    this.lines.set(act.lineId, { ...after, there: thereOf(after) });
  }

  private foreignOf(itemId: string): ForeignState {
    return this.foreign.get(itemId) ?? { found: 0, takenHome: [], note: null };
  }
}

const NOT_COUNTED: LineState = {
  found: null,
  there: null,
  aside: [],
  refills: [],
  takenHome: [],
  at: '',
  lastEntryId: '',
};

/** A figure says what lies there now; every other act moves pieces, and moves the figure where there is one. */
function lineAfter(
  line: LineState,
  act: Extract<BenchAct, { lineId: string }>,
  entry: BenchEntry,
): LineState {
  const moved = (by: number) => (line.found === null ? null : line.found + by);
  switch (act.kind) {
    case 'found':
      return { ...line, found: act.pieces };
    case 'oneMore':
      return { ...line, found: (line.found ?? 0) + 1 };
    case 'fault':
      return { ...line, found: moved(-act.pieces), aside: withAside(line.aside, act) };
    case 'refill': {
      const refill: RefillOfLine = {
        entryId: entry.id,
        pieces: act.pieces,
        from: act.from,
        secondPersonId: entry.secondPersonId ?? null,
      };
      return { ...line, found: moved(act.pieces), refills: [...line.refills, refill] };
    }
    case 'surplusHome':
      return {
        ...line,
        found: moved(-act.pieces),
        takenHome: [...line.takenHome, { pieces: act.pieces, home: act.home }],
      };
    default:
      return never(act);
  }
}

function thereOf(line: LineState): number | null {
  return line.found === null ? null : line.found + asideOf(line) + takenHomeOf(line) - refilledOf(line);
}

function withAside(aside: readonly AsidePieces[], { condition, route, pieces }: AsidePieces): AsidePieces[] {
  const same = (one: AsidePieces) => one.condition === condition && one.route === route;
  return aside.some(same)
    ? aside.map((one) => (same(one) ? { ...one, pieces: one.pieces + pieces } : one))
    : [...aside, { condition, route, pieces }];
}

/** The condition most of the pieces put aside are in, as the set's contents keep one for each line. */
export function mainCondition(line: LineState): Fault | 'sound' {
  const by = new Map<Fault, number>();
  for (const { condition, pieces } of line.aside) by.set(condition, (by.get(condition) ?? 0) + pieces);
  return [...by].sort(([, a], [, b]) => b - a)[0]?.[0] ?? 'sound';
}
