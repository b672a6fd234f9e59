import 'server-only';
import type { Database } from '@/db/client';
import { kitBasis } from '@/db/queries/caseKit';
import { takenForEmergencies } from '@/db/queries/emergency/record';
import { keptVersions } from '@/db/queries/keptVersions';
import { THE_PROGRAM } from '@/db/reader';
import type { Item } from '@/lib/catalogue/item';
import { type EmergencyOption, emergencyOptions, type SetInReach } from '@/lib/emergency/options';
import { type ShortLine, shortLines } from '@/lib/emergency/shortLines';
import type { ItemId, SetId } from '@/lib/identity/ids';
import { availableFor } from '@/lib/kits/availability';
import { type Buildable, buildableFrom } from '@/lib/kits/buildable';
import type { Needs } from '@/lib/kits/need';
import { needsOf } from '@/lib/kits/needs';
import type { Store, StoredPack, StoredSet } from '@/lib/kits/store';
import { waysToServe } from '@/lib/kits/waysToServe';
import { wallClock } from '@/lib/theatre/localTime';
import type { PlanningFacts } from '@/lib/theatre/planning/facts';
import { plannedList } from '../theatre-planning';
import { type Barred, barredSets } from './barred';
import type { ResolvedEmergency } from './resolve';

/** A set that could serve the emergency, as it stands. */
export interface SetStandingNow extends SetInReach {
  stored: StoredSet;
  /** Why it can't be had, where it can't. */
  because: Barred | null;
  /** What it is short of; `null`: the reader is to check it blind. */
  short: ShortLine[] | null;
  /** Whether it builds the construct by itself; `null` without a construct. */
  builds: 'yes' | 'no' | 'notEstablished' | null;
  /** What it lacks for the construct, whether or not it should hold that: each with what would do, and the steps it stops. */
  lacks: Buildable['blocked'];
}

/** What is sterile now, what is on its way, what is short, and what is in single packs. */
export interface EmergencyAnswer {
  facts: PlanningFacts;
  store: Store;
  items: ReadonlyMap<ItemId, Item>;
  /** `null`: the plan is not known yet. */
  needs: Needs | null;
  /** Whole ways to build the construct, the best first. */
  options: EmergencyOption[];
  /** Whether what the hospital has builds the construct at all. */
  outcome: 'canBeMet' | 'short' | 'nothingNeeded' | 'notKnown';
  sets: SetStandingNow[];
  packs: StoredPack[];
}

/** Sets, options and single packs for the construct, by the list as planned now; a list planned within the minute is used again. */
export async function emergencyAnswer(
  db: Database,
  { listed, region, chosen, neededAt, now, caseMinutes }: ResolvedEmergency,
): Promise<EmergencyAnswer> {
  const forCase = listed?.id ?? null;
  const [{ facts }, own, whole, taken, versions] = await Promise.all([
    plannedList(db),
    kitBasis(db, forCase),
    kitBasis({ ...db, reader: THE_PROGRAM }, forCase),
    takenForEmergencies(db, now),
    keptVersions(db),
  ]);
  const construct = chosen?.construct ?? null;
  const caseDate = wallClock(neededAt).date;
  const because = barredSets(whole.store, caseDate, taken, forCase);
  const until = new Date(Date.parse(neededAt) + caseMinutes * 60_000).toISOString();
  const inReach = new Map<SetId, SetInReach>(
    whole.store.sets.map((set) => [
      set.id,
      reachOf(set, because.get(set.id) ?? null, facts, { forCase, from: now, until }),
    ]),
  );
  const ways = construct ? waysToServe({ ...whole, construct, caseDate }) : null;
  const neededMinutes = Math.floor((Date.parse(neededAt) - Date.parse(facts.now)) / 60_000);
  const kinds = ways
    ? kindsInWays(ways, whole.store)
    : new Set(
        [...versions.values()].flatMap(({ configurationId, promises }) =>
          promises.some((one) => one.construct.region === region) ? [configurationId as string] : [],
        ),
      );
  const needs = construct ? needsOf(construct, own.catalogue, own.engine) : null;
  const ownSets = new Map(own.store.sets.map((set) => [set.id, set]));
  const shown = whole.store.sets.filter(
    ({ configurationId }) => kinds.size === 0 || kinds.has(configurationId),
  );
  return {
    facts,
    store: whole.store,
    items: new Map(own.catalogue.map((item) => [item.id, item])),
    needs,
    options: ways ? emergencyOptions(ways, inReach, neededMinutes) : [],
    outcome: ways?.outcome ?? 'notKnown',
    sets: shown.map((stored): SetStandingNow => {
      const seen = ownSets.get(stored.id);
      const blind = seen !== undefined && seen.contents.length === 0 && stored.contents.length > 0;
      const built =
        construct && !blind ? buildableFrom(construct, stored.contents, own.catalogue, own.engine) : null;
      return {
        ...(inReach.get(stored.id) as SetInReach),
        // what it weighs tells what lies in it
        stored: blind ? seen : stored,
        because: because.get(stored.id) ?? null,
        short: blind ? null : shortLines(stored.contents, built),
        builds: built?.outcome ?? null,
        lacks: built?.blocked ?? [],
      };
    }),
    packs: packsFor(whole.store, caseDate, needs, shown),
  };
}

function reachOf(
  set: StoredSet,
  because: Barred | null,
  facts: PlanningFacts,
  { forCase, from, until }: { forCase: string | null; from: string; until: string },
): SetInReach {
  const fact = facts.sets.find(({ id }) => id === set.id);
  return {
    id: set.id,
    code: set.code,
    readyMinutes: fact?.readyMinutes ?? null,
    promisedTo: facts.promises
      .filter(
        (promise) =>
          promise.setId === set.id &&
          promise.caseId !== forCase &&
          promise.fromAt < comingBack(until, facts, set) &&
          promise.untilAt > from,
      )
      .flatMap(({ caseId }) => facts.cases.find(({ id }) => id === caseId)?.reference ?? []),
    barred: because !== null,
  };
}

/** When the set could be back in the store after the emergency, half of the time. */
function comingBack(until: string, facts: PlanningFacts, set: StoredSet): string {
  const kind = facts.configurations.find(({ name }) => name === set.configurationName);
  const minutes = kind?.stages.reduce((sum, { p50Minutes }) => sum + p50Minutes, 0) ?? 0;
  return new Date(Date.parse(until) + minutes * 60_000).toISOString();
}

/** The configurations of every set that is part of a way. */
function kindsInWays({ ways }: ReturnType<typeof waysToServe>, { sets }: Store): Set<string> {
  const ids = new Set(ways.flatMap(({ parts }) => parts.flat()));
  return new Set(sets.flatMap(({ id, configurationId }) => (ids.has(id) ? [configurationId as string] : [])));
}

/** Single packs of what the construct needs; without one, of what the sets for the region hold as must-haves. */
function packsFor(
  store: Store,
  caseDate: Parameters<typeof availableFor>[1],
  needs: Needs | null,
  shown: readonly StoredSet[],
): StoredPack[] {
  const wanted = needs
    ? new Set<ItemId>([
        ...needs.pieces.flatMap(({ accepts }) => accepts.map(({ itemId }) => itemId)),
        ...needs.chains.flatMap(({ slots }) =>
          slots.flatMap(({ candidates }) => candidates.flatMap(({ itemId }) => itemId ?? [])),
        ),
      ])
    : new Set<ItemId>(
        shown.flatMap(({ contents }) =>
          contents.flatMap(({ itemId, mustHaveClass }) => (mustHaveClass <= 2 ? [itemId] : [])),
        ),
      );
  return availableFor(store, caseDate).packs.filter(({ itemId }) => wanted.has(itemId));
}
