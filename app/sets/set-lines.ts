import 'server-only';
import type { Tone } from '@/app/_ui/tone';
import type { SetStandings, StandingSet } from '@/db/queries/setStandings';
import type { ItemId } from '@/lib/identity/ids';
import { writeGrams } from '@/lib/quantities/mass';
import type { TurnStep } from '@/lib/sets/setState';
import { piecesShort, standingWord } from '@/lib/sets/standing';
import { percentOf } from '@/lib/wording/numbers';
import {
  BUILDABLE_NOW_TONES,
  BUILDABLE_NOW_WORDS,
  foreignStops,
  momentWords,
  STANDING_TONES,
  STANDING_WORDS,
  stepWords,
  stopAbout,
  stopWords,
  unmetWords,
} from '@/lib/wording/sets';

/** A set as the whole-hospital view shows it: words, and what they are sorted by. Plain JSON. */
export interface SetLine {
  id: string;
  code: string;
  configurationCode: string;
  configuration: string;
  loan: boolean;
  rank: number;
  standing: { word: string; tone: Tone };
  stops: { about: string; href: string | null; words: string }[];
  remarks: string[];
  step: TurnStep;
  stepWords: string;
  since: string;
  sinceAt: string;
  place: string | null;
  ready: string | null;
  pieces: { found: number; expected: number; percent: string; share: number; uncounted: number };
  mustHaves: { met: number; of: number; share: number };
  buildable: { word: string; tone: Tone; what: string }[];
  mass: { grams: number; words: string; exact: boolean; limit: { word: string; tone: Tone } | null };
  promisedTo: { href: string; reference: string; when: string }[];
  newer: number | null;
}

/** By the standings they tell of, which are kept for no longer than the minute. */
const kept = new WeakMap<SetStandings, readonly SetLine[]>();

/** Rows of the whole-hospital view in the order given, which is that of what a shortage stops. */
export function setLines(standings: SetStandings, now: string): readonly SetLine[] {
  const known = kept.get(standings);
  if (known) return known;
  const name = (id: ItemId) => standings.items.get(id)?.name ?? id;
  const lines = standings.sets.map((one, rank) => lineOf(one, rank, name, now));
  kept.set(standings, lines);
  return lines;
}

function lineOf(
  { set, standing, newer }: StandingSet,
  rank: number,
  name: (id: ItemId) => string,
  now: string,
): SetLine {
  const { figures } = standing;
  const word = standingWord(standing);
  return {
    id: set.id,
    code: set.code,
    configurationCode: set.configuration.code,
    configuration: set.configuration.name,
    loan: set.owner === 'loan',
    rank,
    standing: { word: STANDING_WORDS[word], tone: STANDING_TONES[word] },
    stops: standing.stops.map((stop) => ({
      about: stopAbout(stop, now),
      href: stop.kind === 'case' ? `/cases/${stop.caseId}/kit` : null,
      words: stopWords(stop, name),
    })),
    remarks: [
      ...unmetWords(figures.mustHaves.lines),
      ...(standing.uncounted > 0
        ? [
            standing.uncounted === 1
              ? 'One line is not counted.'
              : `${standing.uncounted} lines are not counted.`,
          ]
        : []),
      ...(standing.foreign > 0 ? [foreignStops(standing.foreign)] : []),
      ...(figures.pieces.surplus > 0 ? [`${figures.pieces.surplus} over what is expected.`] : []),
      ...(word === 'short'
        ? [piecesShort(standing) === 1 ? 'One piece short.' : `${piecesShort(standing)} pieces short.`]
        : []),
    ],
    step: set.step,
    stepWords: stepWords(set.step, set.heldBecause),
    since: momentWords(set.stepSince, now),
    sinceAt: set.stepSince,
    place: set.place?.name ?? null,
    ready: set.readyAt === null ? null : momentWords(set.readyAt, now),
    pieces: {
      found: figures.pieces.found,
      expected: figures.pieces.expected,
      percent: percentOf(figures.pieces.percent),
      share: figures.pieces.percent,
      uncounted: standing.uncounted,
    },
    mustHaves: {
      met: figures.mustHaves.met,
      of: figures.mustHaves.of,
      share: figures.mustHaves.of === 0 ? 1 : figures.mustHaves.met / figures.mustHaves.of,
    },
    buildable: standing.promises.map((promise) => ({
      word: BUILDABLE_NOW_WORDS[promise.outcome],
      tone: BUILDABLE_NOW_TONES[promise.outcome],
      what: promise.name,
    })),
    mass: massOf(figures.mass),
    promisedTo: set.promisedTo.map(({ caseId, reference, startsAt }) => ({
      href: `/cases/${caseId}`,
      reference,
      when: momentWords(startsAt, now),
    })),
    newer,
  };
}

function massOf(mass: StandingSet['standing']['figures']['mass']): SetLine['mass'] {
  const over = mass.limits.filter(({ state }) => state === 'over').at(-1);
  const near = mass.limits.find(({ state }) => state === 'near');
  const limit = over ?? near;
  return {
    grams: mass.foundGrams,
    words: mass.exact ? writeGrams(mass.foundGrams) : `at least ${writeGrams(mass.foundGrams)}`,
    exact: mass.exact,
    limit: limit
      ? { word: `${over ? 'over' : 'near'} ${writeGrams(limit.limitGrams)}`, tone: 'attention' }
      : null,
  };
}
