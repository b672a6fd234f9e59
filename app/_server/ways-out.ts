import 'server-only';
import type { Database } from '@/db/client';
import { applyRepair } from '@/db/operations/theatre/apply-repair';
import { askQuickerTurn } from '@/db/operations/theatre/ask-quicker-turn';
import type { CaseRequest } from '@/db/operations/theatre/at-case';
import type { RepairBasis } from '@/db/operations/theatre/repair-basis';
import { findCase } from '@/db/queries/cases';
import { kindsOfSet } from '@/db/queries/theatre/kindsOfSet';
import { roundTimes } from '@/db/queries/turns/roundTimes';
import { loadWantedTurns } from '@/db/queries/turns/wantedTurns';
import type { CaseId, SetId } from '@/lib/identity/ids';
import { type Outcome, refused } from '@/lib/identity/refusal';
import { type Act, may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';
import type { CaseToServe, PlanningFacts } from '@/lib/theatre/planning/facts';
import { loansForShort } from '@/lib/theatre/planning/loanForShort';
import { type Offer, offersFor, type RepairKind } from '@/lib/theatre/planning/offers';
import type { WantedTurn } from '@/lib/turns/wanted';
import { offerWords, wayOutWords } from '@/lib/wording/ways-out';
import type { PlannedAnew } from './list-planner';
import { namesOfPieces } from './names-of-pieces';
import { planAgain } from './plan-again';
import { factsToTell, planList } from './theatre-planning';

/** A way out as the screen shows it. */
export interface WayOut {
  key: string;
  title: string;
  does: string[];
  costs: string[];
  /** What its button says; `null` where this person, or nobody, can do it by one press. */
  confirm: string | null;
  /** Loan requests filled in for it. */
  requests: { label: string; href: string }[];
}

interface Found {
  facts: PlanningFacts;
  one: CaseToServe;
  offers: Offer[];
}

/** Which act it takes. */
const TAKES: Record<RepairKind, Act> = {
  otherSets: 'promiseSets',
  quickerTurn: 'promiseSets',
  changeOrder: 'keepTheatreList',
  laterSlot: 'keepTheatreList',
  borrow: 'readHospital',
  loan: 'readHospital',
};

/** What can be done for a case, worked out now; `null` where it is none that is planned for. */
async function find(db: Database, caseId: CaseId): Promise<Found | null> {
  const listed = await findCase(db, caseId);
  if (!listed) return null;
  const { facts: all, answer } = await planList(db, [listed.reference]);
  const facts = await factsToTell(db, all);
  const one = facts.cases.find(({ id }) => id === caseId);
  if (!one) return null;
  const offers =
    one.ways?.outcome === 'short'
      ? loansForShort(facts, one, await kindsOfSet(db))
      : offersFor(facts, answer, one);
  const asked = await loadWantedTurns(db, facts.now);
  return { facts, one, offers: offers.filter((offer) => !isAskedFor(offer, facts, asked, caseId)) };
}

/** Whether this very turn is asked for already, by the same time, for the case. */
function isAskedFor(
  { quicker }: Offer,
  { sets }: PlanningFacts,
  asked: readonly WantedTurn[],
  caseId: CaseId,
) {
  const set = sets.find(({ code }) => code === quicker?.set);
  return asked.some(
    ({ setId, forCase, wantedBy }) =>
      setId === set?.id && forCase.id === caseId && wantedBy === quicker?.wantedBy,
  );
}

/** The ways out for a case at risk, the cheapest first, as far as this person can take them. */
export async function waysOut(
  db: Database,
  caseId: CaseId,
  role: Role,
): Promise<{ revision: number; waysOut: WayOut[] } | null> {
  const [found, { pouch }] = await Promise.all([find(db, caseId), namesOfPieces(db)]);
  if (!found) return null;
  const { facts, one, offers } = found;
  const needBy = new Date(Date.parse(one.startsAt) - one.leadMinutes * 60_000).toISOString();
  const nameOf = new Map(facts.configurations.map(({ id, name }) => [id, name]));
  return {
    revision: one.revision,
    waysOut: offers.map((offer) => {
      const words = offerWords(offer, { now: facts.now, reference: one.reference, needBy, pouch });
      return {
        key: offer.key,
        ...words,
        confirm: may({ role }, TAKES[offer.kind]) ? words.confirm : null,
        requests: (offer.elsewhere?.configurations ?? []).map((id) => ({
          label: nameOf.get(id) ?? 'the set',
          href: `/loans/new?case=${one.id}&configuration=${id}`,
        })),
      };
    }),
  };
}

export interface WayTaken {
  /** What was done, in words. */
  done: string;
  planned: PlannedAnew | null;
}

/** Plans that change while a way out is taken are few; whoever takes it is told after so many. */
const MOST_TRIES = 3;

/**
 * Takes the way out that a person saw, worked out anew: it is taken only if it still is what it was, in all that it does and
 * costs, and nothing that it rests on changes meanwhile. Else it is refused, and what can be done now is to be shown.
 */
export async function takeWayOut(
  db: Database,
  request: Omit<CaseRequest, 'now'> & { key: string; now: () => string },
): Promise<Outcome<WayTaken, { revision: number }>> {
  const { key, caseId, person } = request;
  for (let tries = 1; ; tries += 1) {
    const found = await find(db, caseId);
    if (!found) return refused('notFound', 'There is no such case to come.');
    const offer = found.offers.find((one) => one.key === key);
    const stale = refused('conflict', wayOutWords.stale(found.one.reference), {
      revision: found.one.revision,
    });
    if (!offer || found.one.revision !== request.baseRevision) return stale;
    const outcome = await take(db, { ...request, now: request.now() }, found, offer);
    if (!outcome.ok && outcome.refusal.because === 'conflict') {
      if (tries < MOST_TRIES) continue;
      return stale;
    }
    if (!outcome.ok) return outcome;
    const { pouch } = await namesOfPieces(db);
    const { title } = offerWords(offer, {
      now: found.facts.now,
      reference: found.one.reference,
      needBy: found.one.startsAt,
      pouch,
    });
    const planned = offer.quicker === null ? await planAgain(db, person, 'apply-repair') : null;
    return { ok: true, value: { done: wayOutWords.done(found.one.reference, title), planned } };
  }
}

async function take(
  db: Database,
  request: CaseRequest,
  { facts }: Found,
  offer: Offer,
): Promise<Outcome<object, { revision: number }>> {
  const { cases, sets, promises } = facts;
  const caseNamed = (reference: string): CaseId => {
    const one = cases.find((other) => other.reference === reference);
    if (!one) throw new Error(`${reference} is in the plan and not in the facts`);
    return one.id;
  };
  const setNamed = (code: string): SetId => {
    const set = sets.find((other) => other.code === code);
    if (!set) throw new Error(`${code} is in the plan and not in the facts`);
    return set.id;
  };
  const madeFrom: RepairBasis = {
    promises: new Set(promises.map(({ id }) => id)),
    revisions: new Map([...cases, ...sets].map(({ id, revision }) => [id, revision])),
  };
  switch (offer.kind) {
    case 'otherSets':
    case 'changeOrder':
    case 'laterSlot':
      if (offer.theatreTakenBy !== null) return refused('frozen', wayOutWords.overtaken);
      return applyRepair({
        ...request,
        kind: offer.kind,
        gives: offer.gives.map(({ reference, sets: codes }) => ({
          caseId: caseNamed(reference),
          setIds: codes.map(setNamed),
        })),
        moves: offer.moves.map(({ reference, startsAt, endsAt }) => ({
          caseId: caseNamed(reference),
          startsAt,
          endsAt,
        })),
        madeFrom,
        round: await roundTimes(db),
      });
    case 'quickerTurn': {
      const { quicker } = offer;
      if (!quicker) return refused('frozen', wayOutWords.overtaken);
      return askQuickerTurn({
        ...request,
        setId: setNamed(quicker.set),
        afterCaseId: quicker.afterCase === null ? null : caseNamed(quicker.afterCase),
        wantedBy: quicker.wantedBy,
        madeFrom,
      });
    }
    case 'borrow':
    case 'loan':
      return refused('frozen', wayOutWords.byRequest);
  }
}
