import { eq } from 'drizzle-orm';
import { z } from 'zod';
import {
  accountOf,
  PACK_OUTCOMES,
  type ReturnOutcome,
  returnOutcome,
  SET_OUTCOMES,
} from '@/lib/caseLife/account';
import { type CaseId, type NewId, pickId, returnId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import { type Problem, problemsFromZod } from '@/lib/identity/result';
import { type Attestation, attests } from '@/lib/people/attestation';
import { may } from '@/lib/people/permissions';
import { textProblems } from '@/lib/plans/checkConstruct';
import { turnStep } from '@/lib/sets/setState';
import { stockOwner } from '@/lib/stock/stock';
import { pickWords as words } from '@/lib/wording/case-life';
import { turnWords } from '@/lib/wording/turns';
import type { Database, Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { pickNames } from '../../queries/caseLife/names';
import { type KitOnRecord, kitOnRecord, type PickRow } from '../../queries/caseLife/standing';
import { biologicalWaitedFor } from '../../queries/loads/implantsWait';
import type { Person } from '../../queries/people';
import { wasCountedOpen } from '../../queries/theatreCounts/counted';
import { packsLeft } from '../../queries/usage/packsLeft';
import { caseReturns, loads, packs, setPromises, sets, stock } from '../../schema';
import { addToHeap } from '../pieces/heaps';
import { recordMoves } from '../pieces/record-moves';
import { endPack, UNPACKED } from '../turns/end-pack';
import { type SetRow, takeStep } from '../turns/take-step';

export const sentReturn = z.strictObject({
  id: returnId,
  pickId,
  outcome: returnOutcome,
  quantity: z.number().int('whole pieces only').min(1, 'at least 1').max(99, 'at most 99'),
  note: z.string().trim().min(1).max(400).nullable(),
});

interface ReturnThing {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  caseId: CaseId;
  /** As sent from outside; parsed here. Its id is made where it is entered, so that twice is once. */
  returned: unknown;
  /** Of what comes back unopened: that this person looked at its barrier. */
  attestation: Attestation | null;
}

/**
 * Says what became of something that was issued. What comes back unopened goes into the sterile store again only where a
 * person who may has looked at its barrier and says so; whatever was opened never does.
 */
export async function returnThing(
  request: ReturnThing,
): Promise<Outcome<{ id: string; stillOut: number }, never>> {
  const { db, now, person, caseId, attestation } = request;
  const parsed = sentReturn.safeParse(request.returned);
  if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
  const sent = parsed.data;
  return db.tx(async (write) => {
    const kit = await kitOnRecord(write, caseId);
    const pick = kit?.picks.find(({ id }) => id === sent.pickId);
    if (!kit || !pick) return refused('notFound', words.noSuchPick);
    const [before] = await write.select().from(caseReturns).where(eq(caseReturns.id, sent.id));
    if (before)
      return before.pickId === pick.id && before.outcome === sent.outcome && before.quantity === sent.quantity
        ? { ok: true, value: { id: sent.id, stillOut: stillOutOf(kit, pick) } }
        : refused('conflict', words.idTaken);
    if (!may(person, 'returnKit'))
      return refused('notPermitted', words.mayNot(person.name, 'enter what came back'));
    const unopened = sent.outcome === 'returnedUnopened';
    if (unopened && !may(person, 'judgeBarrier'))
      return refused(
        'notPermitted',
        words.mayNot(person.name, 'judge the barrier of what came back unopened'),
      );
    if (unopened && !(attestation && attests(attestation, person.id, 'iLookedAtTheBarrier', now)))
      return refused('notPermitted', words.proofNeeded);
    const called = (await pickNames(write, [pick])).get(pick.id) ?? pick.id;
    const atTable = pick.setId === null ? (await packsLeft(write, caseId)).get(pick.id) : undefined;
    const left =
      atTable === undefined ? stillOutOf(kit, pick) : Math.min(atTable.left, stillOutOf(kit, pick));
    const problems = problemsOf(left, pick, sent, called);
    if (problems.length > 0) return refusedFor(problems);
    const set = pick.setId === null ? null : await setOf(write, pick.setId);
    if (set) {
      const kept = await whyNotBack(write, set, caseId, sent.outcome);
      if (kept) return refused('frozen', kept);
    }
    await write.insert(caseReturns).values({
      ...sent,
      attested: unopened && attestation ? said(attestation) : null,
      personId: person.id,
      doneAt: now,
      enteredAt: now,
    });
    if (set) await setBack(write, request, { set, pick, outcome: sent.outcome });
    else await packsBack(write, request, { pick, sent });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'return-from-case',
      subjectKind: 'case',
      subjectId: caseId,
      detail: {
        returnId: sent.id,
        pickId: pick.id,
        outcome: sent.outcome,
        quantity: sent.quantity,
        ...(pick.setId === null
          ? { stockId: pick.stockId, itemId: pick.itemId, lot: pick.lot }
          : { setId: pick.setId }),
        ...(sent.note === null ? {} : { note: sent.note }),
        ...(unopened && attestation ? { attested: said(attestation) } : {}),
      },
    });
    return { ok: true, value: { id: sent.id, stillOut: stillOutOf(kit, pick) - sent.quantity } };
  });
}

const said = ({ meaning, method, at }: Attestation) => ({ meaning, method, at });

function stillOutOf({ returns }: KitOnRecord, pick: PickRow): number {
  const own = returns
    .filter((one) => one.pickId === pick.id)
    .map(({ pickId: of, outcome, quantity }) => ({
      pickId: of,
      outcome: returnOutcome.parse(outcome),
      quantity,
    }));
  return accountOf([{ id: pick.id, quantity: pick.quantity, issued: pick.issuedAt !== null }], own).stillOut;
}

function problemsOf(out: number, pick: PickRow, sent: z.infer<typeof sentReturn>, called: string): Problem[] {
  const problems: Problem[] = [];
  const add = (path: string, code: string, message: string) => problems.push({ path: [path], code, message });
  if (pick.issuedAt === null) add('pickId', 'not-issued', words.notIssued(called));
  if (pick.issuedAt !== null && sent.quantity > out)
    add('quantity', 'more-than-out', words.moreThanOut(called, out));
  const open = pick.setId === null ? PACK_OUTCOMES : SET_OUTCOMES;
  if (!open.includes(sent.outcome)) add('outcome', 'not-open', words.outcomeNotOpen(called));
  if (sent.outcome === 'notFound' && sent.note === null) add('note', 'needed', words.notFoundNeedsNote);
  problems.push(...textProblems(sent.note ?? '', ['note']));
  return problems;
}

async function setOf(write: Queries, setId: string): Promise<SetRow> {
  const [set] = await write.select().from(sets).where(eq(sets.id, setId));
  if (!set) throw new Error(`${setId} is picked and not on record`);
  return set;
}

/** Why a set can't be said to be back as that; `null` where it can. */
async function whyNotBack(
  write: Queries,
  set: SetRow,
  caseId: string,
  outcome: ReturnOutcome,
): Promise<string | null> {
  const to = outcome === 'returnedUnopened' ? 'inSterileStore' : 'comingBack';
  if (set.withdrawnAt !== null) return turnWords.withdrawn(set.code);
  if (set.step === 'held') return turnWords.stillHeld(set.code);
  if (set.step !== 'inTheatre' || set.caseId !== caseId)
    return turnWords.illegal(set.code, turnStep.parse(set.step), to);
  if (outcome !== 'returnedUnopened') return null;
  if (await wasCountedOpen(write, caseId, set.id)) return words.openedAlready(set.code);
  const [row] = await write
    .select({ state: packs.state, load: loads.state })
    .from(packs)
    .leftJoin(loads, eq(loads.id, packs.loadId))
    .where(eq(packs.id, set.packId ?? ''));
  if (row?.state !== 'sterile' || row.load !== 'accepted') return words.notSterileAnyMore(set.code);
  const waitsFor = set.packId === null ? null : await biologicalWaitedFor(write, set.packId);
  return waitsFor === null ? null : turnWords.waitsForBiological(set.code, waitsFor);
}

async function setBack(
  write: Queries,
  { person, now, newId, caseId }: ReturnThing,
  { set, pick, outcome }: { set: SetRow; pick: PickRow; outcome: ReturnOutcome },
): Promise<void> {
  const unopened = outcome === 'returnedUnopened';
  const taken = await takeStep(write, {
    set,
    to: unopened ? 'inSterileStore' : 'comingBack',
    action: unopened ? 'return-set-unopened' : 'receive-set',
    person,
    now,
    newId,
    change: unopened ? { readyAt: now } : UNPACKED,
    detail: { caseId, packId: set.packId, pickId: pick.id },
  });
  if (!taken.ok) throw new Error(taken.refusal.problems[0]?.message ?? 'the step is open');
  if (!unopened) await endPack(write, set.packId);
  // the promise is kept: from here on the set is there again, or on its way to whoever is next
  const promised = await write.select().from(setPromises).where(eq(setPromises.setId, set.id));
  for (const { id, caseId: of } of promised)
    if (of === caseId) await write.delete(setPromises).where(eq(setPromises.id, id));
}

/** Where the pieces went, as far as this says it: of what was opened the record of use tells whether it was implanted. */
const MOVE_OF = {
  returnedUnopened: { act: 'cameBack', reason: null },
  damaged: { act: 'wasted', reason: 'damaged' },
  notFound: { act: 'notFound', reason: 'theatre' },
} as const;

async function packsBack(
  write: Queries,
  { person, now, caseId }: ReturnThing,
  { pick, sent }: { pick: PickRow; sent: z.infer<typeof sentReturn> },
): Promise<void> {
  const { outcome, quantity } = sent;
  const stockId = pick.stockId ?? '';
  if (outcome === 'returnedUnopened') await addToHeap(write, stockId, quantity);
  const move = outcome === 'opened' || outcome === 'cameBack' ? null : MOVE_OF[outcome];
  const [heap] = await write.select().from(stock).where(eq(stock.id, stockId));
  if (move && heap)
    await recordMoves(write, [
      {
        ...move,
        itemId: heap.itemId,
        lot: heap.lot,
        useBy: heap.useBy,
        quantity,
        owner: stockOwner.parse(heap.owner),
        ...(move.act === 'cameBack' ? { to: { stockId } } : {}),
        caseId,
        pickId: pick.id,
        packId: pick.packId,
        source: sent.id,
        personId: person.id,
        doneAt: now,
        enteredAt: now,
      },
    ]);
  if (outcome === 'returnedUnopened') return;
  // its label no longer stands for a sealed pack
  if (outcome !== 'notFound' && pick.packId !== null) await endPack(write, pick.packId);
}
