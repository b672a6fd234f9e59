import type { Queries } from '@/db/client';
import { beginConsignment, insertPastUsageOrder } from '@/db/operations/consignment/begin-consignment';
import { movesOfHeaps } from '@/db/queries/consignment/ownedMoves';
import { type UsageLine, waitingLines } from '@/lib/consignment/waiting';
import { groupBy } from '@/lib/lists/groupBy';
import { addDays, type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { MAKERS } from '../catalogue/makers';
import type { HospitalClock } from '../hospitalClock';
import { LENDERS } from '../loans/loanPlan';

/** Who keeps stock of which maker here on consignment. */
const OWNER_OF_MAKER: Record<string, (typeof LENDERS)[number]['id']> = {
  [MAKERS.sallowfen.id]: 'lender_sallowfen',
  [MAKERS.carrowby.id]: 'lender_corrow-hill',
};

/** Nobody has said yet whose this one is. */
const LOT_NOT_STATED = 'PH35-0417';

/** So many uses of each owner’s are on no usage order yet: the newest. */
const LINES_WAITING = 3;

const MINUTE = 60_000;

/**
 * Whose the consigned stock is, and a usage order a quarter to each owner for what was used of it, but for the newest. Needs
 * the journal of pieces: what it says was used decides what the orders say.
 */
export async function insertConsignment(write: Queries, clock: HospitalClock): Promise<void> {
  for (const [makerId, lenderId] of Object.entries(OWNER_OF_MAKER))
    await beginConsignment(write, { makerId, lenderId, butLot: LOT_NOT_STATED });
  const told = LENDERS.flatMap(({ id: lenderId }) => {
    const used = waitingLines(movesOfHeaps(write, lenderId)).sort((a, b) => a.doneOn.localeCompare(b.doneOn));
    const quarters = groupBy(used.slice(0, -LINES_WAITING), ({ doneOn }) => lastMonthOfQuarter(doneOn));
    return [...quarters].map(([month, lines], at) => {
      const isLast = at === quarters.size - 1;
      return { lenderId, lines, isLast, made: madeOn(month, lines, isLast, clock.today) };
    });
  }).sort((a, b) => a.made.localeCompare(b.made) || a.lenderId.localeCompare(b.lenderId));
  for (const [at, one] of told.entries()) await tell(write, { ...one, at: at + 1 });
}

/** The day after a quarter; the last one ends within its quarter, for what was used after it waits. */
function madeOn(month: string, lines: readonly UsageLine[], isLast: boolean, today: PlainDate): string {
  const [year = 0, of = 0] = month.split('-').map(Number);
  const lastDay = isLast ? lines.at(-1)?.doneOn : undefined;
  const over = plainDate.parse(lastDay ?? new Date(Date.UTC(year, of, 0)).toISOString().slice(0, 10));
  const [day] = [addDays(over, 1), addDays(today, -1)].sort();
  return `${day}T09:00:00.000Z`;
}

/** `2025-08-14 → 2025-09`. */
function lastMonthOfQuarter(day: string): string {
  const [year = '', month = ''] = day.split('-');
  return `${year}-${String(Math.ceil(Number(month) / 3) * 3).padStart(2, '0')}`;
}

interface Told {
  at: number;
  lenderId: string;
  lines: readonly UsageLine[];
  isLast: boolean;
  made: string;
}

/** One order, made, approved and sent on the first morning after what it tells of. */
async function tell(write: Queries, { at, lenderId, lines, isLast, made }: Told): Promise<void> {
  const later = (minutes: number) => new Date(Date.parse(made) + minutes * MINUTE).toISOString();
  const keeper = 'person_dilys-harrow';
  await insertPastUsageOrder(write, {
    made: {
      id: `usageOrder_demo-${at}`,
      number: `UO-${String(at).padStart(4, '0')}`,
      lenderId,
      madeBy: keeper,
      madeAt: made,
      journalSeq: Math.max(...lines.map(({ moveSeq }) => moveSeq)),
      uncertain: [],
    },
    lines: lines.map((line, index) => ({
      ...line,
      id: `usageLine_demo-${at}-${index + 1}`,
      // what was not implanted is told, and not asked for again
      replace: line.way === 'takenBack' ? null : line.outcome === 'implanted',
    })),
    approved: { approvedBy: 'person_gwen-sallis', approvedAt: later(75) },
    sent: {
      sentBy: keeper,
      sentAt: later(110),
      sentHow: 'by e-mail to their order desk, with the paper',
    },
    settled: isLast
      ? null
      : {
          settledBy: keeper,
          settledAt: later(20 * 24 * 60),
          settledBecause: 'Their replacements came with the deliveries of that month.',
        },
  });
}
