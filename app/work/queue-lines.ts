import 'server-only';
import type { Tone } from '@/app/_ui/tone';
import type { QueuedSet, WorkQueue } from '@/db/queries/turns/workQueue';
import type { ItemId } from '@/lib/identity/ids';
import { may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';
import { standingWord } from '@/lib/sets/standing';
import { ACT_OF, screenOf } from '@/lib/turns/acts';
import type { NextAct } from '@/lib/turns/queue';
import { capitalised } from '@/lib/wording/numbers';
import {
  momentWords,
  STANDING_TONES,
  STANDING_WORDS,
  stepWords,
  stopAbout,
  stopWords,
} from '@/lib/wording/sets';
import { wayOutWords } from '@/lib/wording/ways-out';
import { beginWords, minutesWords, needWords, stageWords } from '@/lib/wording/work';

/** A set in the queue as the screen shows it: words, plain JSON. */
export interface WorkLine {
  set: { id: string; code: string; revision: number };
  configuration: string;
  where: string;
  held: boolean;
  since: string;
  act: NextAct;
  mayAct: boolean;
  href: string | null;
  late: string | null;
  /** By when and for which case somebody wants it sooner. */
  wanted: { words: string; href: string } | null;
  need: { words: string; href: string; when: string } | null;
  begin: string;
  takes: string;
  /** Each stage with where its time comes from. */
  working: string[];
  standing: { word: string; tone: Tone } | null;
  stops: string[];
}

export function workLines({ lines, items }: WorkQueue, role: Role, now: string): WorkLine[] {
  const name = (id: ItemId) => items.get(id)?.name ?? id;
  return lines.map((queued) => workLine(queued, role, name, now));
}

function workLine(
  { line, one: { set, standing }, loadId }: QueuedSet,
  role: Role,
  name: (id: ItemId) => string,
  now: string,
): WorkLine {
  const word = standingWord(standing);
  const { presentMinutes, present, stages, need } = line;
  const total = (presentMinutes ?? 0) + line.takesMinutes;
  return {
    set: { id: set.id, code: set.code, revision: set.revision },
    configuration: set.configuration.name,
    where: capitalised(stepWords(set.step, set.heldBecause)),
    held: set.step === 'held',
    since: momentWords(set.stepSince, now),
    act: line.act,
    mayAct: may({ role }, ACT_OF[line.act]),
    href: screenOf(line.act, set.id, loadId),
    late: line.lateMinutes > 0 ? minutesWords(line.lateMinutes) : null,
    wanted: line.wanted && {
      words: wayOutWords.wanted(
        momentWords(line.wanted.wantedBy, now),
        line.wanted.forCase.reference,
        line.wanted.askedBy,
      ),
      href: `/cases/${line.wanted.forCase.id}`,
    },
    need: need && {
      words: needWords(need),
      href: `/cases/${need.caseId}`,
      when: momentWords(need.startsAt, now),
    },
    begin: beginWords(line, now),
    takes: takesWords(total, presentMinutes === null),
    working: [
      ...(present === null || presentMinutes === null
        ? []
        : [
            presentMinutes === 0
              ? `${stageWords(present)} It has been there longer.`
              : `${stageWords(present)} ${minutesWords(presentMinutes)} of it are left.`,
          ]),
      ...stages.map(stageWords),
    ],
    standing: word === 'whole' ? null : { word: STANDING_WORDS[word], tone: STANDING_TONES[word] },
    stops: standing.stops.slice(0, 2).map((stop) => `${stopAbout(stop, now)}: ${stopWords(stop, name)}`),
  };
}

function takesWords(minutes: number, waits: boolean): string {
  if (waits) return `${minutesWords(minutes)} to the sterile store, once it may go on`;
  return minutes === 0
    ? 'Could be in the sterile store now'
    : `${minutesWords(minutes)} to the sterile store`;
}
