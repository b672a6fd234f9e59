import { and, asc, desc, eq, gt, inArray, isNull, or } from 'drizzle-orm';
import { type ItemId, itemId, stockId } from '@/lib/identity/ids';
import { groupBy } from '@/lib/lists/groupBy';
import { plainDate } from '@/lib/quantities/plainDate';
import type { HeldLine } from '@/lib/sets/holdings';
import { type ShortAsk, shortAsk } from '@/lib/sets/short/ask';
import {
  type Lapse,
  lapsesOf,
  type NotCovered,
  notCovered,
  type ShortDecision,
} from '@/lib/sets/short/decision';
import { choicesFor, type StandIn } from '@/lib/sets/short/standIns';
import { mayRead, type Reading } from '../../reader';
import {
  cases,
  configurations,
  configurationVersions,
  items,
  people,
  places,
  setPromises,
  sets,
  stock,
} from '../../schema';
import { hiddenFrom } from '../bench/blind';
import { heapsHiddenFrom } from '../shelf/blindHeaps';
import { presentDecisions } from './decisions';
import { shortFacts } from './facts';

/** Pieces of a short item lying in a place, the nearest first. */
export interface SpareAtHand {
  itemId: ItemId;
  /** `null` while the reader counts it without seeing the record. */
  quantity: number | null;
  form: 'pouch' | 'sterilePacked' | 'unsterile';
  place: string;
  metres: number;
  lot: string | null;
  useBy: string | null;
}

export interface ShortChoice extends StandIn {
  pieces: number;
  /** Where the pouch lies, with lot and use-by; `null` for a piece of the set itself. */
  at: { place: string; lot: string | null; useBy: string | null } | null;
}

export interface CaseChoice {
  id: string;
  reference: string;
  startsAt: string;
  surgeonId: string;
  surgeon: string;
  promised: boolean;
}

/** All that is shown where it is decided on a short set. */
export interface ShortScreen {
  ask: ShortAsk;
  lines: HeldLine[];
  choices: { lineId: string; itemId: ItemId; missing: number; from: ShortChoice[] }[];
  spares: SpareAtHand[];
  decision: { decision: ShortDecision; reference: string | null; lapses: Lapse[]; open: NotCovered[] } | null;
  cases: CaseChoice[];
}

export async function loadShortScreen(db: Reading, id: string, now: string): Promise<ShortScreen | null> {
  mayRead(db, 'readHospital');
  const { read } = db;
  const [set] = await read.select().from(sets).where(eq(sets.id, id));
  if (!set) return null;
  const [facts, decisions, booked, promised] = await Promise.all([
    shortFacts(read, set, now),
    presentDecisions(read, id),
    read
      .select({ row: cases, surgeon: people.name })
      .from(cases)
      .innerJoin(people, eq(people.id, cases.surgeonId))
      .where(and(gt(cases.endsAt, now), isNull(cases.cancelledAt)))
      .orderBy(asc(cases.startsAt)),
    read.select().from(setPromises).where(eq(setPromises.setId, id)),
  ]);
  const ask = shortAsk(facts);
  const present = [...decisions.values()][0] ?? null;
  const where = await placesOf(
    db,
    facts.pouches.map((pouch) => pouch.stockId),
  );
  const lineOf = new Map(facts.lines.map((line) => [line.id, line]));
  const shortItems = ask.findings.flatMap((one) =>
    one.rule === 'notEstablished' || one.rule === 'homeless' ? [] : [one.itemId],
  );
  return {
    ask,
    lines: [...facts.lines],
    choices: ask.findings.flatMap((finding) => {
      const line = finding.rule === 'classTwo' ? lineOf.get(finding.lineId) : undefined;
      if (finding.rule !== 'classTwo' || !line) return [];
      const from = choicesFor(line, facts.lines, facts.pouches).map((choice): ShortChoice => {
        const at = choice.from.kind === 'pouch' ? (where.get(choice.from.stockId) ?? null) : null;
        return { ...choice, at };
      });
      return [{ lineId: line.id, itemId: line.itemId, missing: finding.missing, from }];
    }),
    spares: await sparesOf(db, shortItems),
    decision: present && {
      decision: present.decision,
      reference: present.named?.reference ?? null,
      lapses: lapsesOf(present.decision, present.named, now),
      open: notCovered(present.decision, ask, facts.lines, facts.pouches),
    },
    cases: booked
      .map(({ row, surgeon }): CaseChoice => {
        const { id: caseId, reference, startsAt, surgeonId } = row;
        const isPromised = promised.some((promise) => promise.caseId === caseId);
        return { id: caseId, reference, startsAt, surgeonId, surgeon, promised: isPromised };
      })
      .sort((a, b) => Number(b.promised) - Number(a.promised)),
  };
}

async function placesOf({ read }: Reading, ids: readonly string[]) {
  if (ids.length === 0) return new Map<string, { place: string; lot: string | null; useBy: string | null }>();
  const rows = await read
    .select({ id: stock.id, lot: stock.lot, useBy: stock.useBy, place: places.name })
    .from(stock)
    .innerJoin(places, eq(places.id, stock.placeId))
    .where(inArray(stock.id, [...ids]));
  return new Map<string, { place: string; lot: string | null; useBy: string | null }>(
    rows.map(({ id, ...rest }) => [stockId.parse(id), rest]),
  );
}

async function sparesOf(db: Reading, ids: readonly ItemId[]): Promise<SpareAtHand[]> {
  if (ids.length === 0) return [];
  const [rows, counted] = await Promise.all([
    db.read
      .select({ stock, place: places })
      .from(stock)
      .innerJoin(places, eq(places.id, stock.placeId))
      .where(inArray(stock.itemId, [...new Set(ids)]))
      .orderBy(asc(places.metres), asc(stock.useBy)),
    heapsHiddenFrom(db),
  ]);
  return rows
    .filter(({ stock: row }) => row.quantity > 0 && row.heldBecause === null)
    .map(({ stock: row, place }) => ({
      itemId: itemId.parse(row.itemId),
      quantity: counted.has(row.id) ? null : row.quantity,
      form: row.form as SpareAtHand['form'],
      place: place.name,
      metres: place.metres,
      lot: row.lot,
      useBy: row.useBy === null ? null : plainDate.parse(row.useBy),
    }));
}

async function namesOf({ read }: Reading, ask: ShortAsk): Promise<Map<ItemId, string>> {
  const ids = [
    ...new Set(
      ask.findings.flatMap((one) =>
        one.rule === 'classTwo' ? [one.itemId, ...one.substitutes] : [one.itemId],
      ),
    ),
  ];
  if (ids.length === 0) return new Map();
  const rows = await read
    .select({ id: items.id, name: items.name })
    .from(items)
    .where(inArray(items.id, ids));
  return new Map(rows.map(({ id, name }) => [itemId.parse(id), name]));
}

/** A set that waits for a decision, or goes by one. */
export interface OpenDecision {
  setId: string;
  code: string;
  configuration: string;
  /** Names of the items its findings speak of. */
  names: ReadonlyMap<ItemId, string>;
  step: string;
  since: string;
  ask: ShortAsk;
  decision: { kind: ShortDecision['kind']; reference: string | null; reason: string; lapses: Lapse[] } | null;
}

/** Sets that wait for a decision, the longest first; then those that go by one, with what has lapsed first. A set
 * the reader is to check blind is left out until they have. */
export async function openDecisions(db: Reading, now: string): Promise<OpenDecision[]> {
  mayRead(db, 'readHospital');
  const [decisions, hidden] = await Promise.all([presentDecisions(db.read), hiddenFrom(db)]);
  const rows = await db.read
    .select({ set: sets, configuration: configurations.name })
    .from(sets)
    .innerJoin(configurationVersions, eq(configurationVersions.id, sets.versionId))
    .innerJoin(configurations, eq(configurations.id, configurationVersions.configurationId))
    .where(or(eq(sets.step, 'shortAwaitingDecision'), inArray(sets.id, [...decisions.keys()])))
    .orderBy(asc(sets.stepSince), desc(sets.code));
  const concerned = rows.filter(({ set }) => {
    if (set.withdrawnAt !== null || hidden.has(set.id)) return false;
    const present = decisions.get(set.id as never);
    return (
      set.step === 'shortAwaitingDecision' || (present !== undefined && present.decision.kind !== 'backUps')
    );
  });
  const open = await Promise.all(
    concerned.map(async ({ set, configuration }): Promise<OpenDecision> => {
      const present = decisions.get(set.id as never) ?? null;
      const ask = shortAsk(await shortFacts(db.read, set, now));
      return {
        setId: set.id,
        code: set.code,
        configuration,
        names: await namesOf(db, ask),
        step: set.step,
        since: set.stepSince,
        ask,
        decision: present && {
          kind: present.decision.kind,
          reference: present.named?.reference ?? null,
          reason: present.decision.reason,
          lapses: lapsesOf(present.decision, present.named, now),
        },
      };
    }),
  );
  const rank = ({ decision }: OpenDecision) => (decision === null ? 0 : decision.lapses.length > 0 ? 1 : 2);
  const groups = groupBy(open, (one) => String(rank(one)));
  return [...(groups.get('0') ?? []), ...(groups.get('1') ?? []), ...(groups.get('2') ?? [])];
}
