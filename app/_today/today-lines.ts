import 'server-only';
import type { Readiness } from '@/app/_server/readiness';
import type { Tone } from '@/app/_ui/tone';
import type { ListedCase } from '@/db/queries/cases';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import type { StandingWords } from '@/lib/wording/case-standing';
import { LIMB_WORDS, REGION_WORDS } from '@/lib/wording/plans';
import { readinessWords, standingOnList } from '@/lib/wording/readiness';

/** A case as today's page shows it. */
export interface TodayLine {
  id: string;
  reference: string;
  /** `Today` or `Tomorrow`. */
  day: string;
  startsAt: string;
  time: string;
  theatre: string;
  what: string;
  surgeon: string;
  tone: Tone;
  word: string;
  sentence: string;
  /** Where the next step is: the kit, or the plan when there is none. */
  href: string;
}

/**
 * @param planned how each case stands by the plan of who gets which set; a case that has begun is not in it
 */
export function todayLines(
  cases: readonly ListedCase[],
  today: PlainDate,
  readiness: ReadonlyMap<string, Readiness>,
  planned: ReadonlyMap<string, StandingWords>,
): TodayLine[] {
  return cases.map((one) => {
    const standing = readiness.get(one.id) ?? null;
    return {
      id: one.id,
      reference: one.reference,
      day: one.caseDate === today ? 'Today' : 'Tomorrow',
      startsAt: one.startsAt,
      time: `${wallClock(one.startsAt).time}–${wallClock(one.endsAt).time}`,
      theatre: one.theatre,
      what: `${REGION_WORDS[one.region]}, ${LIMB_WORDS[one.limb].toLowerCase()}`,
      surgeon: one.surgeon,
      ...standingOnList(readinessWords(standing), planned.get(one.id) ?? null),
      href: standing?.kind === 'kit' ? `/cases/${one.id}/kit` : `/cases/${one.id}`,
    };
  });
}
