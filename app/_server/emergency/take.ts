import 'server-only';
import type { Database } from '@/db/client';
import { type TakenForEmergency, takeForEmergency } from '@/db/operations/emergency/take-for-emergency';
import type { Person } from '@/db/queries/people';
import type { EmergencyAsked } from '@/lib/emergency/asked';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { emergencyWords as words } from '@/lib/wording/emergency';
import { drawReference, HOSPITAL_LETTERS } from '../case-references';
import { newId, now } from '../clock';
import { type PreparedTaking, prepareTaking } from './prepare';
import { resolveEmergency } from './resolve';

/** Promises that change while the morning is planned anew are few; whoever takes is told after so many. */
const MOST_TRIES = 3;

/**
 * Takes sets for an emergency as it was shown: the list is planned anew, and where that comes to what was confirmed it is kept.
 * Where promises changed in between it is planned again; where it comes to something else, nothing is taken and it is shown.
 */
export async function takeAsShown(
  db: Database,
  person: Person,
  asked: EmergencyAsked,
  shown: string,
): Promise<Outcome<TakenForEmergency, never>> {
  for (let tries = 1; ; tries += 1) {
    const at = now();
    const resolved = await resolveEmergency(db, asked, at);
    const prepared = await prepareTaking(db, asked, resolved, person);
    const problems = problemsOf(prepared);
    if (problems.length > 0) return refusedFor(problems);
    const { chosen, neededAt } = resolved;
    if (!prepared.target || !chosen) return refusedFor([needed('plan', words.answerAll)]);
    if (prepared.shown !== shown) return refused('conflict', words.changedMeanwhile);
    const taken = await takeForEmergency({
      db,
      now: at,
      newId,
      draw: drawReference,
      hospitalLetters: HOSPITAL_LETTERS,
      person,
      target: prepared.target,
      from: chosen.from,
      construct: chosen.construct,
      neededAt,
      taking: prepared.taking,
      goneAt: asked.gone,
      hits: prepared.hits,
      madeFrom: new Set(prepared.list.facts.promises.map(({ id }) => id)),
      round: prepared.round,
    });
    if (taken.ok || taken.refusal.because !== 'conflict') return taken;
    if (tries === MOST_TRIES) return refused('conflict', words.overtaken);
  }
}

function problemsOf({ unknown, sets, surgeonId }: PreparedTaking): Problem[] {
  return [
    ...(sets.length === 0 ? [needed('take', words.nothingTaken)] : []),
    ...unknown.map((code) => needed('take', words.noSuchSet(code))),
    ...(surgeonId === null ? [needed('surgeon', words.chooseSurgeon)] : []),
  ];
}

const needed = (path: string, message: string): Problem => ({ path: [path], code: 'needed', message });
