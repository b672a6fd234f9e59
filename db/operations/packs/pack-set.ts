import { eq } from 'drizzle-orm';
import type { z } from 'zod';
import type { NewId, PackId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { checkPackReason, packSetEntry } from '@/lib/packs/entry';
import { packGate } from '@/lib/packs/gate';
import type { PackedLine, PackShort, PackStop } from '@/lib/packs/pack';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { shortLinesOf } from '@/lib/sets/short/ask';
import { gateSentence, packWords as words } from '@/lib/wording/packs';
import { turnWords } from '@/lib/wording/turns';
import type { Database, Queries } from '../../client';
import { type BeforePacking, beforePacking } from '../../queries/packs/gateFacts';
import type { Person } from '../../queries/people';
import { loadSetStanding } from '../../queries/setStandings';
import { labelPrints, packs, sets, shortDecisions } from '../../schema';
import { keepRefillJobs } from '../short/keep-refill-jobs';
import { sweepLapsed } from '../short/sweep-lapsed';
import { type SetRow, takeStep } from '../turns/take-step';
import { nextPackNumber } from './next-number';

interface PackSet {
  db: Database;
  now: string;
  newId: NewId;
  person: Person;
  workstationId?: string | null;
  /** As sent from outside; parsed here against `packSetEntry`. */
  entry: unknown;
  /** That the packer said "I packed it". */
  attestation: Attestation;
}

export interface SetPacked {
  id: PackId;
  number: string;
  /** The set's revision after it. */
  revision: number;
}

/**
 * Closes a set: everything that keeps it open is said at once; what lay in it, what is short and what that stops are kept
 * with the pack, and its first label is printed. It is not sterile by this.
 */
export async function packSet(request: PackSet): Promise<Outcome<SetPacked, { revision: number }>> {
  const { db, now, person } = request;
  if (!may(person, 'packSet')) return refused('notPermitted', words.notPermitted(person.name, 'pack sets'));
  const parsed = packSetEntry.safeParse(request.entry);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const entry = parsed.data;
  // what the shortage stops takes all sets and plans to work out: it is read before the write, for this very revision
  const stops = await stopsOf(db, entry.setId, now);
  return db.tx(async (write) => {
    const [set] = await write.select().from(sets).where(eq(sets.id, entry.setId));
    if (!set) return refused('notFound', words.noSuchSet);
    const [known] = await write.select().from(packs).where(eq(packs.id, entry.id));
    if (known) {
      return known.setId === set.id && known.packedBy === person.id
        ? { ok: true, value: { id: entry.id, number: known.number, revision: set.revision } }
        : refused('conflict', turnWords.changed(set.code), { revision: set.revision });
    }
    if (set.revision !== entry.baseRevision || stops?.revision !== set.revision)
      return refused('conflict', turnWords.changed(set.code), { revision: set.revision });
    await sweepLapsed(write, now);
    const before = await beforePacking(write, set, now, entry.weighedGrams);
    const problems = problemsOf(request, entry, before);
    if (problems.length > 0) {
      const stopped = problems.some(({ code }) => code === 'gate');
      return { ok: false, refusal: { because: stopped ? 'frozen' : 'invalid', problems, current: null } };
    }
    return closeSet(write, { request, entry, set, before, stops: stops.stops });
  });
}

async function stopsOf(
  db: Database,
  id: string,
  now: string,
): Promise<{ revision: number; stops: PackStop[] } | null> {
  const standing = await loadSetStanding(db, id, now);
  if (!standing) return null;
  const stops = standing.standing.stops as PackStop[];
  return { revision: standing.set.revision, stops };
}

type Entry = z.output<typeof packSetEntry>;

function problemsOf({ person, attestation, now }: PackSet, entry: Entry, before: BeforePacking): Problem[] {
  const gate = packGate(before.facts);
  const stopping = gate.findings.filter(({ severity }) => severity === 'stops');
  return [
    ...stopping.map(({ finding }): Problem => {
      return { path: [], code: 'gate', message: gateSentence(finding, before.nameOf) };
    }),
    ...(attests(attestation, person.id, 'iPacked', now)
      ? []
      : [{ path: ['proof'], code: 'not-proven', message: words.notProven }]),
    ...checkPackReason('shortReason', entry.shortReason, gate.reasons.short, words.shortReason),
    ...checkPackReason('massReason', entry.massReason, gate.reasons.mass, words.massReason),
  ];
}

interface Closing {
  request: PackSet;
  entry: Entry;
  set: SetRow;
  before: BeforePacking;
  stops: PackStop[];
}

async function closeSet(write: Queries, closing: Closing): Promise<Outcome<SetPacked, { revision: number }>> {
  const { request, entry, set, before, stops } = closing;
  const { now, newId, person } = request;
  const { facts, lines } = before;
  const lineShorts = shortLinesOf(facts.ask.findings);
  const decisionId = await decisionOf(write, closing);
  const short: PackShort | null =
    lineShorts.length === 0
      ? null
      : {
          lines: lineShorts,
          stops,
          substitutes: before.decision?.substitutes ?? [],
          forCase: facts.ask.oneCase ? before.forCase && pick(before.forCase) : null,
        };
  const contents = lines.map(({ id: lineId, itemId, mustHaveClass, expected, found }): PackedLine => {
    return { lineId, itemId, mustHaveClass, expected, found: found ?? 0 };
  });
  const number = await nextPackNumber(write);
  await write.insert(packs).values({
    id: entry.id,
    number,
    kind: 'set',
    setId: set.id,
    turnId: set.turnId,
    versionId: set.versionId,
    barrier: entry.barrier,
    packedBy: person.id,
    packedAt: now,
    workedGrams: facts.mass.exact && facts.mass.workedGrams > 0 ? facts.mass.workedGrams : null,
    weighedGrams: entry.weighedGrams,
    contents,
    short,
    decisionId,
    forCaseId: short?.forCase?.id ?? null,
    state: 'closed',
    revision: 1,
  });
  await write.insert(labelPrints).values({
    id: newId('print'),
    packId: entry.id,
    copy: 1,
    because: null,
    printedBy: person.id,
    printedAt: now,
  });
  const taken = await takeStep(write, {
    set,
    to: 'packed',
    action: 'pack-set',
    person,
    now,
    newId,
    workstationId: request.workstationId,
    change: { packId: entry.id },
    detail: {
      packId: entry.id,
      number,
      barrier: entry.barrier,
      contents: contents.map(({ lineId, found }) => ({ lineId, found })),
      short: lineShorts,
      decisionId,
      forCaseId: short?.forCase?.id ?? null,
      mass: {
        workedGrams: facts.mass.workedGrams,
        exact: facts.mass.exact,
        weighedGrams: entry.weighedGrams,
        reason: entry.massReason?.trim() || null,
      },
      label: { copy: 1 },
      attested: {
        meaning: request.attestation.meaning,
        method: request.attestation.method,
        at: request.attestation.at,
      },
    },
  });
  // thrown, not returned: what was inserted must not stay
  if (!taken.ok) throw new Error(`${set.code} could not be packed: ${taken.refusal.problems[0]?.message}`);
  await keepRefillJobs(write, {
    set,
    turnId: taken.value.turnId,
    lines,
    person,
    now,
    newId,
  });
  return { ok: true, value: { id: entry.id, number, revision: taken.value.revision } };
}

/** The decision the pack goes by: the one that stands, or the packer's own where only back-ups are short. */
async function decisionOf(write: Queries, { request, entry, set, before }: Closing): Promise<string | null> {
  const { ask } = before.facts;
  if (ask.asks === 'approvers') return before.decision?.id ?? null;
  if (ask.asks !== 'technician' || set.turnId === null) return null;
  const { person, attestation, now, newId } = request;
  const id = newId('decision');
  await write.insert(shortDecisions).values({
    id,
    setId: set.id,
    turnId: set.turnId,
    kind: 'backUps',
    lines: shortLinesOf(ask.findings),
    substitutes: [],
    reason: entry.shortReason?.trim() ?? '',
    caseId: null,
    approvals: [
      {
        as: 'technician',
        personId: person.id,
        name: person.name,
        method: attestation.method,
        at: attestation.at,
      },
    ],
    decidedAt: now,
    lapsesAt: null,
    lapsedAt: null,
  });
  return id;
}

const pick = ({ id, reference }: { id: string; reference: string }) =>
  ({ id, reference }) as NonNullable<PackShort['forCase']>;
