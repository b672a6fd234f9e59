import 'server-only';
import { namesOfPieces } from '@/app/_server/names-of-pieces';
import { plannedStandings } from '@/app/_server/planned-standings';
import { readinessOf } from '@/app/_server/readiness';
import { todayLines } from '@/app/_today/today-lines';
import type { Tone } from '@/app/_ui/tone';
import type { Database } from '@/db/client';
import { listCases } from '@/db/queries/cases';
import { listOwners } from '@/db/queries/consignment/owners';
import { loadBoard } from '@/db/queries/loads/loadBoard';
import { loanBoard } from '@/db/queries/loans/loanBoard';
import { lotsNearUseBy } from '@/db/queries/morning/lotsNearUseBy';
import { wasteOfMonth } from '@/db/queries/morning/wasteOfMonth';
import { urgentGaps } from '@/db/queries/restock/gaps';
import { listOrders } from '@/db/queries/restock/orders';
import { readSetting } from '@/db/queries/settings';
import { listOpenRecalls } from '@/db/queries/trace/recallList';
import { listHeldSets } from '@/db/queries/turns/heldSets';
import { dateWords } from '@/lib/documents/edition';
import { isForNow } from '@/lib/loans/board';
import { writePence } from '@/lib/quantities/money';
import { addDays, isPastUseBy, type PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { consignmentScreens } from '@/lib/wording/consignment';
import { nextWords } from '@/lib/wording/loans';
import { capitalised } from '@/lib/wording/numbers';
import { gapName, gapSentence } from '@/lib/wording/restock-screens';
import { HELD_BECAUSE_WORDS, momentWords } from '@/lib/wording/sets';

/** One thing a manager looks after: how much of it waits, the first of it, and where all of it is. */
export interface Topic {
  title: string;
  href: string;
  count: number;
  /** Of the count, while it is not nothing. */
  tone: Tone;
  /** What it means that there is none. */
  none: string;
  lines: { key: string; what: string; detail: string; href: string }[];
}

const GAP_DAYS = 14;

/** `2, 'pack' → '2 packs'`. */
const counted = (count: number, what: string) => `${count} ${what}${count === 1 ? '' : 's'}`;

/** All topics of the morning, in the order in which they are seen to. */
export async function topicsOf(db: Database, at: string): Promise<Topic[]> {
  const today = wallClock(at).date;
  return Promise.all([
    casesAtRisk(db, today),
    gaps(db, at),
    recallsOpen(db),
    held(db, at),
    loadsWaiting(db, at),
    loansDue(db, at, today),
    ordersDue(db, today),
    usageOrdersDue(db, at),
    nearUseBy(db, today),
    waste(db, today),
  ]);
}

async function casesAtRisk(db: Database, today: PlainDate): Promise<Topic> {
  const cases = await listCases(db, today, addDays(today, 2));
  const ids = cases.map(({ id }) => id);
  const [readiness, planned] = await Promise.all([readinessOf(db, ids), plannedStandings(db)]);
  const lines = todayLines(cases, today, readiness, planned.standings).filter(({ tone }) => tone !== 'good');
  return {
    title: 'Cases at risk, today and tomorrow',
    href: '/theatre-list/at-risk',
    count: lines.length,
    tone: lines.some(({ tone }) => tone === 'stop') ? 'stop' : 'attention',
    none: 'Everything planned for these two days is in store and fits.',
    lines: lines.map(({ id, reference, day, time, word, sentence, href }) => ({
      key: id,
      what: `${reference}, ${day.toLowerCase()} ${time}`,
      detail: sentence === '' ? word : `${word}: ${sentence}`,
      href,
    })),
  };
}

async function gaps(db: Database, at: string): Promise<Topic> {
  const [found, { item }] = await Promise.all([urgentGaps(db, at, GAP_DAYS), namesOfPieces(db)]);
  return {
    title: `Shortages of booked cases, next ${GAP_DAYS} days`,
    href: '/restock/gaps',
    count: found.gaps.length,
    tone: 'stop',
    none: 'What confirmed plans need is in the house.',
    lines: found.gaps.map((gap, index) => ({
      key: `${gap.caseId}/${index}`,
      what: `${capitalised(gapName(gap, item))}, ${gap.reference} ${momentWords(gap.startsAt, at)}`,
      detail: gapSentence(gap),
      href: `/cases/${gap.caseId}/kit`,
    })),
  };
}

async function recallsOpen(db: Database): Promise<Topic> {
  const open = (await listOpenRecalls(db)).filter(({ isRehearsal }) => !isRehearsal);
  return {
    title: 'Recalls open',
    href: '/recalls',
    count: open.length,
    tone: 'stop',
    none: 'No recall is open.',
    lines: open.map(({ id, number, what, acknowledged, asked }) => ({
      key: id,
      what: `${number}: ${what}`,
      detail: `${acknowledged} of ${counted(asked, 'task')} acknowledged`,
      href: `/recalls/${id}`,
    })),
  };
}

async function held(db: Database, at: string): Promise<Topic> {
  const sets = (await listHeldSets(db)).filter(({ withdrawn }) => !withdrawn);
  return {
    title: 'Sets held',
    href: '/holds',
    count: sets.length,
    tone: 'attention',
    none: 'No set is held.',
    lines: sets.map(({ id, code, configuration, since, reasons }) => ({
      key: id,
      what: `${code}, ${configuration}`,
      detail: `since ${momentWords(since, at)}, because ${reasons.map(({ because }) => HELD_BECAUSE_WORDS[because]).join('; ')}`,
      href: `/sets/${id}`,
    })),
  };
}

async function loadsWaiting(db: Database, at: string): Promise<Topic> {
  const waiting = (await loadBoard(db, at)).filter(({ state }) => state === 'awaitingAcceptance');
  return {
    title: 'Loads awaiting acceptance',
    href: '/loads',
    count: waiting.length,
    tone: 'attention',
    none: 'Every load that ended is decided.',
    lines: waiting.map(({ id, number, since, packs }) => ({
      key: id,
      what: number,
      detail: `${counted(packs.length, 'pack')}, ended ${momentWords(since, at)}`,
      href: `/loads/${id}`,
    })),
  };
}

async function loansDue(db: Database, at: string, today: PlainDate): Promise<Topic> {
  const tomorrow = addDays(today, 1);
  const due = (await loanBoard(db, at)).filter((loan) => isForNow(loan, tomorrow));
  return {
    title: 'Loans to see to',
    href: '/loans',
    count: due.length,
    tone: due.some(({ overdue }) => overdue) ? 'stop' : 'attention',
    none: 'No loan is late, or due by tomorrow.',
    lines: due.map((loan) => ({
      key: loan.id,
      what: `${loan.number}, ${loan.lender}`,
      detail: `${loan.overdue ? 'Not here. ' : ''}${capitalised(nextWords(loan.next))}`,
      href: `/loans/${loan.id}`,
    })),
  };
}

/** Due by today, or nobody knows by when; the rest is on its way. */
async function ordersDue(db: Database, today: PlainDate): Promise<Topic> {
  const open = await listOrders(db, { closedSince: null });
  const due = open.filter(({ expectedOn }) => expectedOn === null || expectedOn <= today);
  return {
    title: 'Orders due',
    href: '/restock/orders',
    count: due.length,
    tone: 'attention',
    none: 'Nothing on order is due.',
    lines: due.map(({ id, number, maker, expectedOn, here, ordered }) => ({
      key: id,
      what: `${number}, ${maker}`,
      detail: `${here} of ${counted(ordered, 'piece')} here, ${expectedOn === null ? 'nobody has said by when' : `expected ${dateWords(expectedOn)}`}`,
      href: `/restock/orders/${id}`,
    })),
  };
}

/** Used pieces of others’ stock that no usage order has, and usage orders nobody has sent. */
async function usageOrdersDue(db: Database, at: string): Promise<Topic> {
  const due = (await listOwners(db)).filter(({ lines, open }) => lines > 0 || open !== null);
  return {
    title: 'Usage orders due',
    href: '/consignment',
    count: due.length,
    tone: 'attention',
    none: 'Every owner of consigned stock was told what was used.',
    lines: due.map(({ id, name, pieces, lines, open, lastSentAt }) => ({
      key: id,
      what: name,
      detail: [
        ...(lines > 0 ? [`${consignmentScreens.waits(pieces, lines)} used and on no usage order`] : []),
        ...(open === null ? [] : [`${open.number} is not sent`]),
        lastSentAt === null ? 'none was sent before' : `last sent ${momentWords(lastSentAt, at)}`,
      ].join('; '),
      href: open === null ? `/consignment/${id}` : `/consignment/orders/${open.id}`,
    })),
  };
}

async function nearUseBy(db: Database, today: PlainDate): Promise<Topic> {
  const { soonDays } = await readSetting(db.read, 'stock');
  const lots = await lotsNearUseBy(db, addDays(today, soonDays));
  const past = lots.filter(({ useBy }) => isPastUseBy(useBy, today));
  return {
    title: `Past use-by, or within ${soonDays} days`,
    href: '/stock',
    count: lots.length,
    tone: past.length > 0 ? 'stop' : 'attention',
    none: 'Nothing on the shelf is past its use-by, or soon.',
    lines: lots.map(({ itemId, name, lot, useBy, quantity, place }, index) => ({
      key: `${itemId}/${index}`,
      what: name,
      detail: `${quantity} in ${place}${lot === null ? '' : `, lot ${lot}`}: ${isPastUseBy(useBy, today) ? 'past its use-by since' : 'use-by'} ${dateWords(useBy)}`,
      href: `/stock/${itemId}`,
    })),
  };
}

async function waste(db: Database, today: PlainDate): Promise<Topic> {
  const { pieces, pence, unpriced } = await wasteOfMonth(db, today);
  return {
    title: 'Waste this month',
    href: '/reports/costs',
    count: pieces,
    tone: 'neutral',
    none: 'Nothing was opened for nothing or thrown away this month.',
    lines:
      pieces === 0
        ? []
        : [
            {
              key: 'waste',
              what:
                unpriced === pieces
                  ? 'Price not established'
                  : `${writePence(pence)}${unpriced > 0 ? ' or more' : ''}`,
              detail: `${counted(pieces, 'piece')} opened and not implanted, dropped, damaged or past use-by${unpriced > 0 ? `; of ${unpriced} the price is not stated` : ''}`,
              href: '/reports/costs',
            },
          ],
  };
}
