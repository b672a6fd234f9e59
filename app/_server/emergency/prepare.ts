import 'server-only';
import type { Database } from '@/db/client';
import type { EmergencyCase } from '@/db/operations/emergency/take-for-emergency';
import type { RoundTimes } from '@/db/operations/theatre/promises';
import { kitBasis } from '@/db/queries/caseKit';
import { bookingChoices } from '@/db/queries/cases';
import { takenForEmergencies } from '@/db/queries/emergency/record';
import { type TheatreForEmergency, theatresForEmergency } from '@/db/queries/emergency/theatres';
import type { Person } from '@/db/queries/people';
import { roundTimes } from '@/db/queries/turns/roundTimes';
import { THE_PROGRAM } from '@/db/reader';
import type { Item } from '@/lib/catalogue/item';
import type { EmergencyAsked } from '@/lib/emergency/asked';
import { foresee } from '@/lib/emergency/foresee';
import { latestOf } from '@/lib/emergency/options';
import { type Hit, shownOf, type Taking } from '@/lib/emergency/replan';
import { type CaseId, caseId, type ItemId, type PersonId } from '@/lib/identity/ids';
import { type CaseKit, planKit } from '@/lib/kits/caseKit';
import type { Store, StoredSet } from '@/lib/kits/store';
import { wallClock } from '@/lib/theatre/localTime';
import type { PlanningFacts } from '@/lib/theatre/planning/facts';
import { promiseTimes } from '@/lib/theatre/promise';
import type { PlannedList } from '../list-planner';
import { highsSolver } from '../solver/highs';
import { plannedList } from '../theatre-planning';
import { type Barred, barredSets } from './barred';
import type { ResolvedEmergency } from './resolve';

/** A case that is not booked yet, in the plan that foresees what taking sets for it does. */
const NOT_BOOKED = { id: caseId.parse('case_emergency'), reference: 'this emergency' };

/** What would be taken, for when and where, and what that does to everybody else. */
export interface PreparedTaking {
  list: PlannedList;
  round: RoundTimes;
  taking: Taking;
  hits: Hit[];
  /** What is shown of it, to be compared on confirming. */
  shown: string;
  theatres: TheatreForEmergency[];
  surgeons: { id: PersonId; name: string }[];
  surgeonId: PersonId | null;
  sets: StoredSet[];
  /** Chosen sets that can't be had, with why: they are not taken, only recorded where they have gone already. */
  barred: { set: StoredSet; because: Barred }[];
  /** Codes that name no set in service. */
  unknown: string[];
  /** What the chosen sets and the single packs build; `null`: the plan is not known yet. */
  kit: CaseKit | null;
  store: Store;
  items: ReadonlyMap<ItemId, Item>;
  target: EmergencyCase | null;
}

/** Works out a taking from the answers in the address; writes nothing. */
export async function prepareTaking(
  db: Database,
  asked: EmergencyAsked,
  resolved: ResolvedEmergency,
  person: Person,
): Promise<PreparedTaking> {
  const { listed, chosen, now, caseMinutes } = resolved;
  const forCase: CaseId | null = listed?.id ?? null;
  const [list, round, basis, choices, taken] = await Promise.all([
    plannedList(db),
    roundTimes(db),
    kitBasis({ ...db, reader: THE_PROGRAM }, forCase),
    bookingChoices(db),
    takenForEmergencies(db, now),
  ]);
  const sets = asked.take.flatMap((code) => basis.store.sets.find((set) => set.code === code) ?? []);
  const from = asked.gone ?? startFor(sets, list, resolved);
  const theatres = await theatresForEmergency(db, from, caseMinutes);
  const theatre = theatres.find(({ id }) => id === (listed?.theatreId ?? asked.theatre)) ?? theatres[0];
  if (!theatre) throw new Error('a hospital has a theatre');
  const startsAt = listed?.startsAt ?? theatre.freeFrom;
  const endsAt = listed?.endsAt ?? later(startsAt, caseMinutes);
  const barred = barredSets(basis.store, wallClock(startsAt).date, taken, forCase);
  const kit = chosen?.construct
    ? await planKit({
        ...basis,
        construct: chosen.construct,
        caseDate: wallClock(startsAt).date,
        needBy: null,
        store: { ...basis.store, sets: sets.map(asIfThere) },
        solver: highsSolver,
        lengthCover: 'none',
      })
    : null;
  const taking: Taking = {
    caseId: forCase ?? NOT_BOOKED.id,
    reference: listed?.reference ?? NOT_BOOKED.reference,
    theatreId: theatre.id,
    startsAt,
    endsAt,
    fromAt: spokenForFrom(startsAt, theatre.leadMinutes, asked.gone ?? now),
    sets: sets.map(({ id, configurationId }) => ({
      setId: id,
      untilAt: promiseTimes({ startsAt, endsAt }, 0, round.roundMinutes(configurationId)).untilAt,
    })),
    packs: kit?.packs.map(({ stockId, quantity }) => ({ stockId, quantity })) ?? [],
  };
  const facts = asked.gone === null ? list.facts : withoutGone(list.facts, sets);
  const hits = await foresee(facts, list.answer, taking, highsSolver);
  const surgeonId =
    asked.surgeon ??
    listed?.surgeonId ??
    (person.role === 'surgeon' ? person.id : (chosen?.surgeonId ?? null));
  const surgeons = choices.surgeons.map(({ id, name }) => ({ id: id as PersonId, name }));
  return {
    list,
    round,
    taking,
    hits,
    shown: shownOf(hits),
    theatres,
    surgeons,
    surgeonId,
    sets,
    barred: sets.flatMap((set) => {
      const because = barred.get(set.id);
      return because ? [{ set, because }] : [];
    }),
    unknown: asked.take.filter((code) => !sets.some((set) => set.code === code)),
    kit,
    store: basis.store,
    items: new Map(basis.catalogue.map((item) => [item.id, item])),
    target: targetOf(resolved, { startsAt, endsAt, theatreId: theatre.id, surgeonId }),
  };
}

const later = (at: string, minutes: number) => new Date(Date.parse(at) + minutes * 60_000).toISOString();

/** When it can begin at the soonest: when it is needed, or, where a set is later than that, when that is there nine times in ten. */
function startFor(
  sets: readonly StoredSet[],
  { facts }: PlannedList,
  { neededAt }: ResolvedEmergency,
): string {
  const facted = sets.map(({ id }) => ({
    readyMinutes: facts.sets.find((set) => set.id === id)?.readyMinutes ?? null,
  }));
  const ready = latestOf(facted);
  if (ready === null || ready.p90 === 0) return neededAt;
  const readyAt = later(facts.now, ready.p90);
  return readyAt > neededAt ? wholeFive(readyAt) : neededAt;
}

/** A set that went before it was sterile comes back to be reprocessed: nobody can say when, and nobody gets it instead. */
function withoutGone(facts: PlanningFacts, sets: readonly StoredSet[]): PlanningFacts {
  const gone = new Set(sets.flatMap(({ id, step }) => (step === 'inSterileStore' ? [] : [id])));
  return {
    ...facts,
    sets: facts.sets.map((set) => (gone.has(set.id) ? { ...set, readyMinutes: null } : set)),
  };
}

/** Rounded up to five minutes, as a list is written. */
const wholeFive = (at: string) => new Date(Math.ceil(Date.parse(at) / 300_000) * 300_000).toISOString();

/** The lead, or what is left of it; never after the case begins. */
function spokenForFrom(startsAt: string, leadMinutes: number, now: string): string {
  const wanted = later(startsAt, -leadMinutes);
  const from = wanted > now ? wanted : new Date(Date.parse(now)).toISOString();
  return from < startsAt ? from : startsAt;
}

/** A chosen set as it will be when it is opened: what it builds then is by what lies in it. */
function asIfThere(set: StoredSet): StoredSet {
  const { shortFor: _short, letOutFor: _out, ...rest } = set;
  return { ...rest, step: 'inSterileStore', heldBecause: null, readyAt: null, useBy: null, promisedTo: [] };
}

function targetOf(
  { listed, region, limb, chosen, caseMinutes }: ResolvedEmergency,
  at: { startsAt: string; endsAt: string; theatreId: TheatreForEmergency['id']; surgeonId: PersonId | null },
): EmergencyCase | null {
  if (listed) return { kind: 'listed', caseId: listed.id };
  if (region === null || limb === null || chosen === null || at.surgeonId === null) return null;
  const { date, time } = wallClock(at.startsAt);
  const start = chosen.from.startsWith('start_') ? chosen.from : null;
  return {
    kind: 'new',
    booking: {
      theatreId: at.theatreId,
      surgeonId: at.surgeonId,
      date,
      time,
      minutes: caseMinutes,
      startsAt: at.startsAt,
      endsAt: at.endsAt,
      region,
      limb,
      urgency: 'now',
      startId: start as Extract<EmergencyCase, { kind: 'new' }>['booking']['startId'],
    },
  };
}
