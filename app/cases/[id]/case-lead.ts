import type { BookedCaseRow } from '@/db/queries/cases';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { LIMB_WORDS, REGION_WORDS } from '@/lib/wording/plans';

/** What a case is, when, where and whose, in one line. */
export const caseLead = (booked: BookedCaseRow): string =>
  `${REGION_WORDS[booked.region]}, ${LIMB_WORDS[booked.limb].toLowerCase()} · ${booked.theatre} · ${dayWords(booked.caseDate)}, ${wallClock(booked.startsAt).time} · ${booked.surgeon}`;
