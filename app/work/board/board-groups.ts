import 'server-only';
import type { Tone } from '@/app/_ui/tone';
import type { WorkQueue } from '@/db/queries/turns/workQueue';
import { groupBy } from '@/lib/lists/groupBy';
import { may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';
import type { TurnStep } from '@/lib/sets/setState';
import { standingWord } from '@/lib/sets/standing';
import { ACT_OF, screenOf } from '@/lib/turns/acts';
import type { NextAct, QueueLine } from '@/lib/turns/queue';
import { capitalised } from '@/lib/wording/numbers';
import { momentWords, STANDING_TONES, STANDING_WORDS, stepWords, TURN_STEP_WORDS } from '@/lib/wording/sets';
import { minutesWords } from '@/lib/wording/work';

/** The order of the turn; what is out of it stands at the end. */
const ORDER: readonly TurnStep[] = [
  'inTheatre',
  'comingBack',
  'washing',
  'onBench',
  'shortAwaitingDecision',
  'packed',
  'inSteriliser',
  'awaitingAcceptance',
  'inSterileStore',
  'held',
];

export interface BoardSet {
  set: { id: string; code: string; revision: number };
  configuration: string;
  since: string;
  /** How long it has been there. */
  for: string;
  because: string | null;
  late: string | null;
  case: { href: string; reference: string; when: string } | null;
  short: { word: string; tone: Tone } | null;
  /** The one-press step from here; `null` where the step is taken on another screen, or by others. */
  act: NextAct | null;
  href: string | null;
}

export interface BoardGroup {
  step: TurnStep;
  name: string;
  /** How many sets are at the step. */
  count: number;
  /** The first of them, as many as are shown. */
  sets: BoardSet[];
}

/**
 * Every set in service by step, in the order of the turn; within a step as the queue has them, in the store by case.
 *
 * @param most as many of a step are told in full; the sterile store holds thousands that nobody reads here
 */
export function boardGroups({ lines, all }: WorkQueue, role: Role, now: string, most: number): BoardGroup[] {
  const lineOf = new Map(lines.map(({ line, loadId }, at) => [line.setId, { line, loadId, at }]));
  const present = Date.parse(now);
  const byStep = groupBy(all, ({ set }) => set.step);
  return ORDER.map((step) => {
    const here = (byStep.get(step) ?? []).map((one) => {
      const queued = lineOf.get(one.set.id);
      const promise = one.set.promisedTo.find(({ startsAt }) => Date.parse(startsAt) > present);
      const order = queued ? queued.at : promise ? Date.parse(promise.startsAt) : Number.MAX_SAFE_INTEGER;
      return { ...one, queued, promise, order };
    });
    const sets = firstOf(here, most).map(({ set, standing, queued, promise }): BoardSet => {
      const word = standingWord(standing);
      const act = queued?.line.act ?? null;
      return {
        set: { id: set.id, code: set.code, revision: set.revision },
        configuration: set.configuration.name,
        since: momentWords(set.stepSince, now),
        for: minutesWords((present - Date.parse(set.stepSince)) / 60_000),
        because:
          step === 'held'
            ? capitalised(stepWords('held', set.heldBecause).replace('held, because ', ''))
            : null,
        late: queued && queued.line.lateMinutes > 0 ? minutesWords(queued.line.lateMinutes) : null,
        case: caseOf(queued?.line, promise, now),
        short: word === 'whole' ? null : { word: STANDING_WORDS[word], tone: STANDING_TONES[word] },
        act: act !== null && may({ role }, ACT_OF[act]) ? act : null,
        href: act === null ? null : screenOf(act, set.id, queued?.loadId ?? null),
      };
    });
    return { step, name: capitalised(TURN_STEP_WORDS[step]), count: here.length, sets };
  });
}

/** As `localeCompare`, made once. */
const CODES = new Intl.Collator();

/** The first in their order, and of the same order by code: codes are compared only where they decide who is among the first. */
function firstOf<S extends { order: number; set: { code: string } }>(here: readonly S[], most: number): S[] {
  const ordered = here.toSorted((a, b) => a.order - b.order);
  const last = ordered[most - 1]?.order ?? Number.POSITIVE_INFINITY;
  return ordered
    .filter(({ order }) => order <= last)
    .sort((a, b) => a.order - b.order || CODES.compare(a.set.code, b.set.code))
    .slice(0, most);
}

function caseOf(
  line: QueueLine | undefined,
  promise: { caseId: string; reference: string; startsAt: string } | undefined,
  now: string,
): BoardSet['case'] {
  const needed = line?.need ?? promise;
  if (!needed) return null;
  return {
    href: `/cases/${needed.caseId}`,
    reference: needed.reference,
    when: momentWords(needed.startsAt, now),
  };
}
