import 'server-only';
import type { Tone } from '@/app/_ui/tone';
import type { ListedCase } from '@/db/queries/cases';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { LIMB_WORDS, REGION_WORDS, URGENCY_WORDS } from '@/lib/wording/plans';

/** A case as the list shows it: words, and what they are sorted by. */
export interface CaseLine {
  id: string;
  reference: string;
  day: string;
  startsAt: string;
  time: string;
  theatre: string;
  what: string;
  surgeon: string;
  urgency: string;
  plan: { word: string; tone: Tone };
  planned: boolean;
}

export function caseLines(cases: readonly ListedCase[]): CaseLine[] {
  return cases.map((one) => ({
    id: one.id,
    reference: one.reference,
    day: dayWords(one.caseDate),
    startsAt: one.startsAt,
    time: `${wallClock(one.startsAt).time}–${wallClock(one.endsAt).time}`,
    theatre: one.theatre,
    what: `${REGION_WORDS[one.region]}, ${LIMB_WORDS[one.limb].toLowerCase()}`,
    surgeon: one.surgeon,
    urgency: URGENCY_WORDS[one.urgency],
    plan: planState(one.plan),
    planned: one.plan.confirmedVersion !== null || one.plan.draftVersion !== null,
  }));
}

function planState({ confirmedVersion, draftVersion }: ListedCase['plan']): CaseLine['plan'] {
  if (confirmedVersion !== null && draftVersion !== null) {
    return { word: `Version ${confirmedVersion} confirmed, ${draftVersion} in draft`, tone: 'attention' };
  }
  if (confirmedVersion !== null) return { word: `Version ${confirmedVersion} confirmed`, tone: 'good' };
  if (draftVersion !== null) return { word: `Version ${draftVersion} in draft`, tone: 'attention' };
  return { word: 'No plan yet', tone: 'unknown' };
}
