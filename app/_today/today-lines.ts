import 'server-only';
import type { Readiness } from '@/app/_server/readiness';
import type { Tone } from '@/app/_ui/tone';
import type { ListedCase } from '@/db/queries/cases';
import type { PlainDate } from '@/lib/quantities/plainDate';
import { wallClock } from '@/lib/theatre/localTime';
import { sharedSets } from '@/lib/theatre/sharedSets';
import { LIMB_WORDS, REGION_WORDS } from '@/lib/wording/plans';
import { readinessWords, sharedWords } from '@/lib/wording/readiness';

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

/** Starts closer together than this are told apart: theatre, washing, steriliser and the way back of one set. */
const HOURS_TO_COME_ROUND = 12;

export function todayLines(
  cases: readonly ListedCase[],
  today: PlainDate,
  readiness: ReadonlyMap<string, Readiness>,
): TodayLine[] {
  const shared = sharedSets(
    cases.map((one) => {
      const standing = readiness.get(one.id);
      const sets = standing?.kind === 'kit' ? [...standing.summary.open, ...standing.summary.hold] : [];
      return { ...one, sets };
    }),
    HOURS_TO_COME_ROUND,
  );
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
      ...sharedWords(readinessWords(standing), shared.get(one.id) ?? []),
      href: standing?.kind === 'kit' ? `/cases/${one.id}/kit` : `/cases/${one.id}`,
    };
  });
}
