import { highsSolver } from '@/app/_server/solver/highs';
import type { Database } from '@/db/client';
import { type TakeForEmergency, takeForEmergency } from '@/db/operations/emergency/take-for-emergency';
import type { RoundTimes } from '@/db/operations/theatre/promises';
import { listPeople, type Person } from '@/db/queries/people';
import { planningFacts } from '@/db/queries/theatre/planningFacts';
import { setTurnaroundInput } from '@/lib/calculations/setTurnaround/schema';
import { setTurnaround } from '@/lib/calculations/setTurnaround/setTurnaround';
import type { ConstructSource } from '@/lib/emergency/asked';
import { foresee } from '@/lib/emergency/foresee';
import type { Hit, Taking } from '@/lib/emergency/replan';
import { caseId, type NewId, personId, theatreId } from '@/lib/identity/ids';
import type { Construct } from '@/lib/plans/plan';
import { plainDate } from '@/lib/quantities/plainDate';
import { turnaroundInput } from '@/lib/theatre/planning/turnaroundInput';

export const round: RoundTimes = { leadMinutes: 60, roundMinutes: () => 345 };
const CASE_MINUTES = 120;

let made = 0;
export const newId: NewId = (prefix) => {
  made += 1;
  return `${prefix}_test-${made}`;
};

export async function person(db: Database, role: string): Promise<Person> {
  const found = (await listPeople(db)).find((one) => one.role === role);
  if (!found) throw new Error(`nobody is ${role}`);
  return found;
}

/** What is worked out before a press, as the screen does it: the list as it stands, and what taking these sets does. */
export async function looked(
  db: Database,
  now: string,
  codes: readonly string[],
  {
    startsAt = now,
    goneAt = null,
    from = 'unknown',
    construct = null,
  }: { startsAt?: string; goneAt?: string | null; from?: ConstructSource; construct?: Construct | null } = {},
): Promise<Omit<TakeForEmergency, 'person'> & { hits: Hit[] }> {
  const facts = await planningFacts(db, now);
  const plan = setTurnaroundInput.parse({ ...turnaroundInput(facts), repairsFor: [] });
  const said = await setTurnaround(plan, { solver: highsSolver });
  const before = said.outcome === 'answered' ? said.answer : said.known;
  const endsAt = new Date(Date.parse(startsAt) + CASE_MINUTES * 60_000).toISOString();
  const untilAt = new Date(Date.parse(endsAt) + 345 * 60_000).toISOString();
  const sets = codes.map((code) => {
    const set = facts.sets.find((one) => one.code === code);
    if (!set) throw new Error(`no set ${code}`);
    return { setId: set.id, untilAt };
  });
  const fromAt = goneAt ?? now;
  const taking: Taking = {
    caseId: caseId.parse('case_emergency'),
    reference: 'this emergency',
    theatreId: 'theatre_3',
    startsAt,
    endsAt,
    fromAt: fromAt < startsAt ? fromAt : startsAt,
    sets,
    packs: [],
  };
  const hits = await foresee(facts, before, taking, highsSolver);
  return {
    db,
    now,
    newId,
    draw: () => [(made * 7) % 32, (made * 13) % 32, Math.floor(made / 32) % 32, made % 32],
    hospitalLetters: 'LM',
    target: {
      kind: 'new',
      booking: {
        theatreId: theatreId.parse('theatre_3'),
        surgeonId: personId.parse('person_tobias-wray'),
        date: plainDate.parse(startsAt.slice(0, 10)),
        time: '02:10',
        minutes: CASE_MINUTES,
        startsAt,
        endsAt,
        region: 'forearmShaft',
        limb: 'right',
        urgency: 'now',
        startId: null,
      },
    },
    from,
    construct,
    neededAt: startsAt,
    taking,
    goneAt,
    hits,
    madeFrom: new Set(facts.promises.map(({ id }) => id)),
    round,
  };
}

export const take = (asked: Omit<TakeForEmergency, 'person'>, by: Person) =>
  takeForEmergency({ ...asked, person: by });
