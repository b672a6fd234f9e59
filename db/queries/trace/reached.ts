import { type CasePageAsked, FIRST_CASES } from '@/lib/trace/casePage';
import type { RecallOf } from '@/lib/trace/recall';
import { mayRead, type Reading } from '../../reader';
import { blindTo } from './blindTo';
import { type CasesSeen, type NamedSet, namesOfSets } from './lot';
import { recallReach } from './reach';
import { casesSeen } from './reachedCases';
import { type ReachSeen, reachSeen } from './reachSeen';
import { recallNames } from './recallNames';

/** What an item, a set or a load reaches, with names. */
export interface Reached {
  of: RecallOf;
  what: string;
  href: string;
  reach: ReachSeen;
  /** The first page of its cases, or the one asked for. */
  cases: CasesSeen;
  sets: Map<string, NamedSet>;
}

/** What a recall of it would reach now; `null` where there is no such thing. */
export async function traceReach(
  db: Reading,
  of: RecallOf,
  asked: CasePageAsked = FIRST_CASES,
): Promise<Reached | null> {
  mayRead(db, 'readHospital');
  const reach = await recallReach(db.read, of);
  if (!reach) return null;
  const seen = reachSeen(reach, await blindTo(db, of));
  return {
    of,
    ...(await recallNames(db.read, of)),
    reach: seen,
    cases: casesSeen(db.read, seen.cases, asked),
    sets: namesOfSets(
      db.read,
      reach.sets.map(({ setId }) => setId),
    ),
  };
}
