import { existsSync } from 'node:fs';
import { setImmediate as breathe, setTimeout as rest } from 'node:timers/promises';
import { asc, desc, eq } from 'drizzle-orm';
import { type ChainFault, chainChecker } from '@/lib/ledger/checkChain';
import type { HeadLine, HeadReason } from '@/lib/ledger/heads';
import type { Database, Queries } from './client';
import { readLedger, sha256 } from './ledger';
import { writeHead, writeHeadNow } from './ledgerHeadsFile';
import { ledger, ledgerHeads } from './schema';

/** How often it looks, and after how many entries or how long a grown ledger's head goes out. */
const LOOK_EVERY_MS = 2000;
const HEAD_EVERY_ENTRIES = 50;
const HEAD_EVERY_MS = 60_000;
/** Entries checked between two pauses in which others have their turn. */
const BREATH = 50;
/** A ledger of more entries than this is checked beside the work of the day: for each time it takes, others have so many. */
const LONG = 100_000;
const FOR_OTHERS = 3;

/** What is known of a ledger while the program runs. */
export interface LedgerStanding {
  /** Every entry up to this one was checked against the one before it, lastly at `at`; `null` until the first look. */
  checked: { seq: number; at: string } | null;
  /** The newest entry then. */
  head: { seq: number; hash: string } | null;
  /** The first thing found wrong. */
  fault: ChainFault | { kind: 'replaced' } | null;
  /** The newest head in the second place. */
  written: { seq: number; at: string } | null;
  /** Why the last head could not be written there. */
  problem: string | null;
  place: string;
}

/**
 * Follows a ledger while the program runs: checks each new entry against the chain, and writes its head to a second place
 * when the program begins and ends, every 50 entries, after a minute in which it grew, and on each new day. Nothing waits
 * for it.
 */
export function ledgerWatch({ db, place, now }: { db: Database; place: string; now: () => string }) {
  const standing: LedgerStanding = {
    checked: null,
    head: null,
    fault: null,
    written: null,
    problem: null,
    place,
  };
  let checker = chainChecker(sha256);
  let day = now().slice(0, 10);
  let going: Promise<void> | null = null;

  const look = (): Promise<void> => {
    going ??= once().finally(() => {
      going = null;
    });
    return going;
  };

  async function once(): Promise<void> {
    const today = now().slice(0, 10);
    const isNewDay = today !== day;
    day = today;
    await check(isNewDay);
    const head = await newestHead(db.read);
    if (!head) return;
    const reason = reasonToWrite(head, isNewDay);
    if (reason === null) return;
    try {
      const line: HeadLine = { ...head, at: now(), because: reason };
      await writeHead(place, line);
      await db.tx(async (write) => {
        await write
          .insert(ledgerHeads)
          .values({ writtenAt: line.at, seq: line.seq, hash: line.hash, writtenTo: place });
      });
      standing.written = { seq: line.seq, at: line.at };
      standing.problem = null;
    } catch (error) {
      standing.problem = error instanceof Error ? error.message : String(error);
    }
  }

  /** Goes on from where it was; from the beginning on a new day, and where the ledger is another one. */
  async function check(fromBeginning: boolean): Promise<void> {
    if (fromBeginning) checker = chainChecker(sha256);
    else if (!(await continues())) {
      // a demo put back as new takes its heads away with it; nothing else replaces a ledger
      if (existsSync(place)) standing.fault ??= { kind: 'replaced' };
      else standing.written = null;
      checker = chainChecker(sha256);
    }
    let taken = 0;
    let began = performance.now();
    for await (const row of readLedger(db.read, checker.head().seq)) {
      const [fault] = checker.take(row);
      if (fault) standing.fault ??= fault;
      taken += 1;
      if (taken % BREATH !== 0) continue;
      if (taken <= LONG) await breathe();
      else await rest(FOR_OTHERS * (performance.now() - began), undefined, { ref: false });
      began = performance.now();
    }
    const head = checker.head();
    standing.checked = { seq: head.seq, at: now() };
    standing.head = head.seq === 0 ? null : head;
  }

  /** Whether the entry checked last is still the one it was. */
  async function continues(): Promise<boolean> {
    const { seq, hash } = checker.head();
    if (seq === 0) return true;
    const [row] = await db.read.select({ hash: ledger.hash }).from(ledger).where(eq(ledger.seq, seq));
    return row?.hash === hash;
  }

  function reasonToWrite(head: { seq: number; hash: string }, isNewDay: boolean): HeadReason | null {
    if (standing.written === null) return 'start';
    if (isNewDay) return 'day';
    const grown = head.seq - standing.written.seq;
    if (grown === 0) return null;
    if (grown < 0 || grown >= HEAD_EVERY_ENTRIES) return 'entries';
    return Date.parse(now()) - Date.parse(standing.written.at) >= HEAD_EVERY_MS ? 'time' : null;
  }

  return {
    standing: (): LedgerStanding => ({ ...standing }),
    /** Looks now; resolved when what was there is checked and written. */
    look,
    /** Looks from now on, at once and every two seconds. A look that fails is tried again at the next. */
    begin(): void {
      const again = () => {
        look()
          .catch((error: unknown) => {
            standing.problem = error instanceof Error ? error.message : String(error);
          })
          .finally(() => setTimeout(again, LOOK_EVERY_MS).unref());
      };
      again();
    },
    /** The last head, written while the process ends, when nothing can be awaited. */
    end(): void {
      const first = db.read.select(named).from(ledger).orderBy(asc(ledger.seq)).limit(1).get();
      const last = db.read.select(named).from(ledger).orderBy(desc(ledger.seq)).limit(1).get();
      if (!first || !last || last.seq === standing.written?.seq) return;
      writeHeadNow(place, { ...last, ledger: first.hash, at: now(), because: 'stop' });
    },
  };
}
export type LedgerWatch = ReturnType<typeof ledgerWatch>;

const named = { seq: ledger.seq, hash: ledger.hash };

/** The newest entry, and the hash of the first, by which a head says which ledger it is of. */
async function newestHead(read: Queries): Promise<Pick<HeadLine, 'ledger' | 'seq' | 'hash'> | null> {
  const [first] = await read.select(named).from(ledger).orderBy(asc(ledger.seq)).limit(1);
  const [last] = await read.select(named).from(ledger).orderBy(desc(ledger.seq)).limit(1);
  return first && last ? { ...last, ledger: first.hash } : null;
}
