import 'server-only';
import type { Tone } from '@/app/_ui/tone';
import type { ListedCase } from '@/db/queries/cases';
import type { ItemId } from '@/lib/identity/ids';
import type { RiskLine } from '@/lib/theatre/planning/risk';
import { askedWords, besidesWords, marginWords, neededWords } from '@/lib/wording/at-risk';
import { caseStandingWords } from '@/lib/wording/case-standing';
import { capitalised } from '@/lib/wording/numbers';
import { LIMB_WORDS, REGION_WORDS, URGENCY_WORDS } from '@/lib/wording/plans';
import { momentWords } from '@/lib/wording/sets';

/** A case at risk as its row shows it: words, plain JSON. */
export interface RiskRow {
  id: string;
  reference: string;
  stops: boolean;
  when: string;
  theatre: string;
  what: string;
  surgeon: string;
  urgency: string;
  tone: Tone;
  word: string;
  sentence: string;
  besides: string[];
  /** When its sets are needed, and how that compares. */
  needed: string;
  /** Where a person goes on where no set is the answer. */
  link: { label: string; href: string } | null;
  /** Whether anything can be worked out for it. */
  hasWaysOut: boolean;
}

interface Called {
  now: string;
  item: (id: ItemId) => string;
  pouch: (stockId: string) => string;
  /** Sets that are asked to be there sooner for it. */
  asked: { set: string; wantedBy: string; askedBy: string }[];
}

export function riskRow(line: RiskLine, listed: ListedCase, called: Called): RiskRow {
  const { standing, level, needBy, time } = line;
  const { confirmed, urgency, id, reference, startsAt } = line.case;
  const said = caseStandingWords(standing, { ...called, confirmed });
  const planned = standing.kind !== 'notPlanned';
  return {
    id,
    reference,
    stops: level === 'stops',
    when: capitalised(momentWords(startsAt, called.now)),
    theatre: listed.theatre,
    what: `${REGION_WORDS[listed.region]}, ${LIMB_WORDS[listed.limb].toLowerCase()}`,
    surgeon: listed.surgeon,
    urgency: URGENCY_WORDS[urgency],
    tone: said.tone,
    word: said.word,
    sentence: said.sentence,
    besides: [...besidesWords(line), ...called.asked.map((one) => askedWords(one, called.now))],
    needed: planned
      ? `${capitalised(neededWords(needBy, called.now))}; ${marginWords(time)}.`
      : `${capitalised(neededWords(needBy, called.now))}.`,
    link: !planned
      ? { label: 'Go to the plan', href: `/cases/${id}/plan` }
      : !confirmed
        ? { label: 'See the draft', href: `/cases/${id}` }
        : { label: 'See its kit', href: `/cases/${id}/kit` },
    hasWaysOut: planned && level !== 'fine',
  };
}
