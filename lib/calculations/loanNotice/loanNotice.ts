import { afterByWork, beforeByWork, workBetween, workingDayBefore, workOf } from '@/lib/time/workingTime';
import { instantOfWall, type WallTime, writtenInstant } from '@/lib/time/zone';
import { loanNoticeWords } from '@/lib/wording/loan-notice';
import type { Answer, MissingValue } from '../calculation';
import type { LoanNoticeInput, LoanNoticeOutput } from './schema';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

/**
 * When a loan was due, and whether it came in time (calculations.md §13). Clock hours are hours that pass: over a night in
 * which the clocks change, 48 of them are not the same time two days before. Working days and hours are those stated.
 */
export function loanNotice(input: LoanNoticeInput): Answer<LoanNoticeOutput> {
  const { zone, hours, rule } = input;
  const instant = (wall: WallTime): number => {
    const found = instantOfWall(wall, zone, { skipped: 'refuse', repeated: input.repeatedHour });
    if (found.kind !== 'instant') throw new Error('skipped times are refused before');
    return found.ms;
  };
  const moment = (atMs: number) => ({ atMs, written: writtenInstant(atMs, zone) });
  const caseMs = instant(input.caseAt);
  const arrivedMs = input.arrivedAt && instant(input.arrivedAt);
  const nowMs = input.now && instant(input.now);
  const dueMs = dueOf(input, caseMs);
  if (dueMs === null) return nothingToCount(input);

  const working = (fromMs: number, toMs: number) =>
    hours === null ? null : minutes(workBetween(fromMs, toMs, hours, zone));
  const seenMs = arrivedMs ?? nowMs;
  const isLate = seenMs !== null && seenMs > dueMs;
  const processedMs = arrivedMs === null ? null : processedOf(input, arrivedMs);
  const answer: LoanNoticeOutput = {
    outcome:
      arrivedMs !== null
        ? isLate
          ? 'late'
          : 'inTime'
        : nowMs === null
          ? 'unknown'
          : isLate
            ? 'overdue'
            : 'notYetDue',
    case: moment(caseMs),
    due: moment(dueMs),
    arrived: arrivedMs === null ? null : moment(arrivedMs),
    noticeMinutes: arrivedMs === null ? null : minutes(caseMs - arrivedMs),
    noticeWorkingMinutes: arrivedMs === null ? null : working(arrivedMs, caseMs),
    lateMinutes: seenMs === null ? null : isLate ? minutes(seenMs - dueMs) : 0,
    lateWorkingMinutes: seenMs === null ? null : isLate ? working(dueMs, seenMs) : hours && 0,
    processed: processedMs === null ? null : { ...moment(processedMs), beforeCase: processedMs <= caseMs },
    overLimit: input.massLimitsGrams.map((limitGrams) => ({
      limitGrams,
      trays: input.trays.flatMap(({ tray, massGrams }) => ((massGrams ?? 0) > limitGrams ? [tray] : [])),
      notWeighed: input.trays.flatMap(({ tray, massGrams }) => (massGrams === null ? [tray] : [])),
    })),
  };
  const steps = loanNoticeWords.working(answer, rule);
  const missing: MissingValue[] =
    answer.outcome === 'unknown' ? [{ path: ['arrivedAt'], what: loanNoticeWords.arrivalMissing }] : [];
  input.trays.forEach(({ tray, massGrams }, at) => {
    if (massGrams === null && input.massLimitsGrams.length > 0)
      missing.push({ path: ['trays', at, 'massGrams'], what: loanNoticeWords.massMissing(tray) });
  });
  return missing.length > 0
    ? { outcome: 'notEstablished', missing, known: answer, working: steps }
    : { outcome: 'answered', answer, working: steps };
}

/** `null` where there are no working days far and wide. */
function dueOf({ rule, hours, zone, caseAt }: LoanNoticeInput, caseMs: number): number | null {
  switch (rule.kind) {
    case 'clockHours':
      return caseMs - rule.hours * HOUR_MS;
    case 'workingHours':
      return hours && beforeByWork(caseMs, rule.hours * HOUR_MS, hours, zone);
    case 'workingDays': {
      const day = hours && workingDayBefore(caseAt.date, rule.days, hours, zone);
      if (!hours || day === null) return null;
      const work = workOf(day, hours, zone);
      return (rule.dueBy === 'startOfWork' ? work[0]?.fromMs : work[work.length - 1]?.toMs) ?? null;
    }
  }
}

/** Within working hours where they are stated, else as time passes. */
function processedOf({ processingMinutes, hours, zone }: LoanNoticeInput, arrivedMs: number): number | null {
  if (processingMinutes === null) return null;
  const ms = processingMinutes * MINUTE_MS;
  return hours === null ? arrivedMs + ms : afterByWork(arrivedMs, ms, hours, zone);
}

function nothingToCount({ rule }: LoanNoticeInput): Answer<LoanNoticeOutput> {
  const what = loanNoticeWords.noWorkBefore;
  return {
    outcome: 'notEstablished',
    missing: [{ path: ['hours', 'week'], what }],
    known: null,
    working: [{ label: loanNoticeWords.ruleWord(rule), expression: what, value: '–' }],
  };
}

/** Minutes that have passed in full, towards the smaller; no claim of a minute that is not there. */
const minutes = (ms: number) => Math.floor(ms / MINUTE_MS);
