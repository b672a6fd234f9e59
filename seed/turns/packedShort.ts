import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { loadSetStanding } from '@/db/queries/setStandings';
import { namedCase } from '@/db/queries/short/decisions';
import { shortFacts } from '@/db/queries/short/facts';
import { THE_PROGRAM } from '@/db/reader';
import { cases, refillJobs, sets, shortDecisions } from '@/db/schema';
import { caseId, type ItemId, personId } from '@/lib/identity/ids';
import type { PackShort, PackStop } from '@/lib/packs/pack';
import type { Attestation } from '@/lib/people/attestation';
import { plainDate } from '@/lib/quantities/plainDate';
import { type Approver, type ShortAsk, type ShortFacts, shortAsk, shortLinesOf } from '@/lib/sets/short/ask';
import { type Approving, checkDecision } from '@/lib/sets/short/checkDecision';
import type { ShortDecision } from '@/lib/sets/short/decision';
import { checkStandIns, choicesFor, type StandIn } from '@/lib/sets/short/standIns';
import { idOfCode } from '../catalogue/entry';
import { PEOPLE } from '../hospital/people';
import type { SetPlan } from '../sets/setPlan';

/** A pack that is to be closed in the history, as far as a shortage needs to know. */
interface Closed {
  plan: SetPlan;
  setId: string;
  turnId: string;
  packedBy: string;
  packedAt: number;
}

export interface PackedShort extends Omit<Closed, 'packedAt'> {
  packedAt: string;
  decidedAt: string;
  short: PackShort;
  kind: ShortDecision['kind'];
  reason: string;
  approvals: ShortDecision['approvals'];
  lapsesAt: string | null;
}

/** The decision under which a set was closed short. */
export const decisionIdOf = ({ setId }: Pick<PackedShort, 'setId'>) => `decision_demo-${setId.slice(4)}`;

/** Decided so long before it was packed. */
const DECIDED_BEFORE_MS = 12 * 60_000;

/**
 * What let each short set go that was closed, by the same checks as a decision taken in the program: back-ups by the
 * packer alone, all else by those the table asks for. Throws where the table lets it go for nobody.
 */
export async function packedShort(
  write: Queries,
  closed: readonly Closed[],
  now: string,
): Promise<PackedShort[]> {
  const setOf = new Map((await write.select().from(sets)).map((row) => [row.id, row]));
  const caseOf = new Map((await write.select().from(cases)).map((row) => [row.reference as string, row]));
  const found: PackedShort[] = [];
  for (const one of closed) {
    const set = setOf.get(one.setId);
    if (!set) throw new Error(`${one.plan.code} is packed and not there`);
    const booked = caseOf.get(one.plan.sentShort?.forCase ?? '') ?? null;
    const on = booked ? plainDate.parse(booked.caseDate) : undefined;
    const facts = await shortFacts(write, set, now, on);
    const ask = shortAsk(facts);
    if (ask.asks === 'nothing') continue;
    // few are short: each is judged by itself, not every set of the hospital
    const stands = await loadSetStanding({ read: write, reader: THE_PROGRAM }, one.setId, now);
    const decided = ask.asks === 'technician' ? byPacker(one) : byApprovers(one, ask, facts, booked);
    found.push({
      ...one,
      ...decided,
      packedAt: iso(one.packedAt),
      short: {
        lines: shortLinesOf(ask.findings),
        stops: (stands?.standing.stops ?? []) as PackStop[],
        substitutes: decided.substitutes,
        forCase: booked && { id: caseId.parse(booked.id), reference: booked.reference },
      },
      lapsesAt: booked?.endsAt ?? null,
    });
  }
  return found;
}

type Decided = Pick<PackedShort, 'decidedAt' | 'kind' | 'reason' | 'approvals'> & { substitutes: StandIn[] };

/** Short in back-ups alone: the packer's own decision, as it was packed. */
function byPacker({ packedBy, packedAt }: Closed): Decided {
  return {
    decidedAt: iso(packedAt),
    kind: 'backUps',
    reason: 'None of it on the shelf, and the must-haves are there.',
    approvals: [approvalOf('technician', packedBy, iso(packedAt))],
    substitutes: [],
  };
}

function byApprovers(
  { plan, packedAt }: Closed,
  ask: ShortAsk,
  facts: ShortFacts,
  booked: typeof cases.$inferSelect | null,
): Decided {
  if (ask.asks !== 'approvers' || !plan.sentShort)
    throw new Error(`${plan.code} was packed short and nobody decided it`);
  const { standIns = [], by, reason } = plan.sentShort;
  const decidedAt = iso(packedAt - DECIDED_BEFORE_MS);
  const approvals = ask.approvers.map((as, at) => approvalOf(as, by[at] ?? '', decidedAt));
  const substitutes = standIns.map((code) => chosen(plan.code, idOfCode(code) as ItemId, facts));
  const problems = [
    ...checkDecision({
      ask,
      reason,
      approvals: approvals.map(approving),
      caseNamed: booked !== null,
      named: booked && namedCase(booked),
      surgeonName: nameOf(booked?.surgeonId ?? ''),
      now: decidedAt,
    }),
    ...checkStandIns(substitutes, facts.lines, facts.pouches, (id) => id),
  ];
  if (problems.length > 0 || by.length !== ask.approvers.length)
    throw new Error(
      `${plan.code} can’t go short like this: ${problems.map(({ message }) => message).join(' ')}`,
    );
  return { decidedAt, kind: ask.oneCase ? 'oneCase' : 'withSubstitute', reason, approvals, substitutes };
}

/** The pouch of that item for the line it may stand in for. */
function chosen(setCode: string, item: ItemId, { lines, pouches }: ShortFacts): StandIn {
  for (const line of lines) {
    const choice = choicesFor(line, lines, pouches).find(
      ({ itemId, from }) => itemId === item && from.kind === 'pouch',
    );
    const below = line.mustHaveClass === 2 && line.found !== null && line.found < line.minimum;
    if (choice && below) return { lineId: choice.lineId, itemId: choice.itemId, from: choice.from };
  }
  throw new Error(`no pouch of ${item} may stand in in ${setCode}`);
}

function approvalOf(as: Approver, id: string, at: string): ShortDecision['approvals'][number] {
  return { as, personId: personId.parse(id), name: nameOf(id), method: 'pin', at };
}

function approving({ as, personId: id, method, at }: ShortDecision['approvals'][number]): Approving {
  const attestation: Attestation = { personId: id, meaning: 'iSendItShort', method, at };
  const person = PEOPLE.find((one) => one.id === id);
  return { as, attestation, person: person ? { id, name: person.name, role: person.role } : null };
}

const nameOf = (id: string) => PEOPLE.find((one) => one.id === id)?.name ?? id;
const iso = (ms: number) => new Date(ms).toISOString();

/** What sets closed short leave beside their packs: the decisions, and a job for each line to be filled. */
export async function insertShortDecisions(write: Queries, packed: readonly PackedShort[]): Promise<void> {
  await insertMany(
    write,
    shortDecisions,
    packed.map((one) => ({
      id: decisionIdOf(one),
      setId: one.setId,
      turnId: one.turnId,
      kind: one.kind,
      lines: one.short.lines,
      substitutes: one.short.substitutes,
      reason: one.reason,
      caseId: one.short.forCase?.id ?? null,
      approvals: one.approvals,
      decidedAt: one.decidedAt,
      lapsesAt: one.lapsesAt,
      lapsedAt: null,
    })),
  );
  await insertMany(
    write,
    refillJobs,
    packed.flatMap(({ setId, turnId, packedBy, packedAt, short }) =>
      short.lines.map(({ lineId, itemId, short: quantity }, at) => ({
        id: `refill_demo-${setId.slice(4)}-${at + 1}`,
        setId,
        lineId,
        itemId,
        quantity,
        foundBy: packedBy,
        openedAt: packedAt,
        turnId,
      })),
    ),
  );
}
