import { and, asc, eq, gt } from 'drizzle-orm';
import { type PlainDate, plainDate } from '@/lib/quantities/plainDate';
import { turnStep } from '@/lib/sets/setState';
import { lapsesOf } from '@/lib/sets/short/decision';
import type { SendFacts } from '@/lib/turns/send';
import type { Queries } from '../../client';
import { cases, loads, packs, setPromises, type sets, shortDecisions } from '../../schema';
import { setsOnKits } from '../caseLife/standing';
import { readSetting } from '../settings';
import { decisionFromRow, namedCase } from '../short/decisions';
import { heldReasons } from './heldReasons';

/** What decides whether a set may go to a case; inside or outside a write. */
export async function sendFacts(
  read: Queries,
  set: typeof sets.$inferSelect,
  booked: typeof cases.$inferSelect,
  now: string,
): Promise<SendFacts> {
  const [{ policy }, reasons, pack, promisedTo, kits] = await Promise.all([
    readSetting(read, 'sterility'),
    set.step === 'held' ? heldReasons(read, set.id) : [],
    packOf(read, set, now),
    rivalOf(read, set.id, booked, now),
    setsOnKits(read, set.id),
  ]);
  const kit = kits.get(set.id);
  return {
    code: set.code,
    step: turnStep.parse(set.step),
    heldBecause: reasons.map(({ because }) => because),
    pack,
    case: {
      id: booked.id,
      reference: booked.reference,
      caseDate: plainDate.parse(booked.caseDate),
      endsAt: booked.endsAt,
      cancelled: booked.cancelledAt !== null,
    },
    promisedTo,
    onKitOf: kit && kit.caseId !== booked.id ? { reference: kit.reference } : null,
    sterility: policy,
    now,
  };
}

/** The first other case that the set is promised to and cannot serve as well as this one. */
async function rivalOf(
  read: Queries,
  setId: string,
  booked: typeof cases.$inferSelect,
  now: string,
): Promise<SendFacts['promisedTo']> {
  const promised = await read
    .select({ promise: setPromises, reference: cases.reference, startsAt: cases.startsAt })
    .from(setPromises)
    .innerJoin(cases, eq(cases.id, setPromises.caseId))
    .where(and(eq(setPromises.setId, setId), gt(cases.endsAt, now)))
    .orderBy(asc(setPromises.fromAt));
  const ours = promised.find(({ promise }) => promise.caseId === booked.id);
  if (ours) return null;
  // nobody worked out when it would be back: until then it is out at the least for as long as the case takes
  const rival = promised.find(({ promise }) => promise.fromAt < booked.endsAt);
  return rival ? { reference: rival.reference, startsAt: rival.startsAt } : null;
}

async function packOf(read: Queries, set: typeof sets.$inferSelect, now: string): Promise<SendFacts['pack']> {
  if (set.packId === null) return null;
  const [row] = await read
    .select({ pack: packs, load: loads.state, decision: shortDecisions, meant: cases })
    .from(packs)
    .leftJoin(loads, eq(loads.id, packs.loadId))
    .leftJoin(shortDecisions, eq(shortDecisions.id, packs.decisionId))
    .leftJoin(cases, eq(cases.id, packs.forCaseId))
    .where(eq(packs.id, set.packId));
  if (!row) return null;
  const { pack, load, decision, meant } = row;
  // with its case gone or another's, it lapsed before its time
  const lapsed =
    decision !== null && lapsesOf(decisionFromRow(decision), meant && namedCase(meant), now).length > 0;
  return {
    state: pack.state,
    loadAccepted: load === 'accepted',
    useBy: soonest(pack.useBy, set.useBy),
    forCase: meant === null ? null : { id: meant.id, reference: meant.reference },
    decisionLapsesAt: lapsed ? now : soonestInstant(decision?.lapsedAt ?? null, decision?.lapsesAt ?? null),
  };
}

/** The label and the set's own record say the same; where they do not, the sooner counts. */
function soonest(one: string | null, other: string | null): PlainDate | null {
  const dates = [one, other].flatMap((date) => (date === null ? [] : [plainDate.parse(date)])).sort();
  return dates[0] ?? null;
}

function soonestInstant(one: string | null, other: string | null): string | null {
  const instants = [one, other].flatMap((at) => at ?? []);
  return instants.sort((a, b) => Date.parse(a) - Date.parse(b))[0] ?? null;
}
