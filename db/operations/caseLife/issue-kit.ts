import { and, eq, isNull } from 'drizzle-orm';
import { packProblems } from '@/lib/caseLife/packProblems';
import { setPickProblems } from '@/lib/caseLife/setProblems';
import { type Outcome, refused } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { sendWords } from '@/lib/wording/turns';
import type { Queries } from '../../client';
import { appendLedger } from '../../ledger';
import { packFactsOf, setPickFactsOf } from '../../queries/caseLife/pickFacts';
import { type KitOnRecord, type PickRow, stands } from '../../queries/caseLife/standing';
import { thingOnRecord } from '../../queries/caseLife/thing';
import { casePicks, sets } from '../../schema';
import { takeStep } from '../turns/take-step';
import { atKit, changeLife, type KitStepRequest, planProblem } from './at-kit';
import { takeOffShelf } from './off-shelf';

/**
 * The whole kit leaves the store in one write: its sets go into theatre for this case, and its packs off the shelf. Each
 * thing is judged again as it is now; where one may not go, nothing goes, and every reason is said.
 */
export async function issueKit(request: KitStepRequest): Promise<Outcome<{ revision: number }, never>> {
  const { now, person, newId } = request;
  const acting = {
    act: 'issueKit',
    verb: 'issue kits',
    step: 'issue',
    isRepeat: (life: { issuedBy: string | null }) => life.issuedBy === person.id,
  } as const;
  return atKit(request, acting, async (write, kit) => {
    const { booked, life } = kit;
    if (!life) throw new Error(`the kit of ${booked.id} is checked and has no life`);
    const changed = await planProblem(write, kit);
    if (changed) return refused('frozen', changed);
    if (Date.parse(booked.endsAt) < Date.parse(now))
      return refused('frozen', sendWords.caseOver(booked.reference));
    const picks = kit.picks.filter(stands);
    const problems: Problem[] = [];
    for (const pick of picks) problems.push(...(await problemsOf(write, kit, pick, now)));
    if (problems.length > 0) return { ok: false, refusal: { because: 'frozen', problems, current: null } };
    await write
      .update(casePicks)
      .set({ issuedBy: person.id, issuedAt: now })
      .where(and(eq(casePicks.caseId, booked.id), isNull(casePicks.putBackAt), isNull(casePicks.issuedAt)));
    for (const pick of picks) {
      if (pick.stockId !== null)
        await takeOffShelf(write, { pick: { ...pick, stockId: pick.stockId }, personId: person.id, now });
      if (pick.setId === null) continue;
      const [set] = await write.select().from(sets).where(eq(sets.id, pick.setId));
      if (!set) throw new Error(`${pick.setId} was there a moment ago`);
      const sent = await takeStep(write, {
        set,
        to: 'inTheatre',
        action: 'send-to-theatre',
        person,
        now,
        newId,
        change: { caseId: booked.id },
        detail: { caseId: booked.id, packId: set.packId, pickId: pick.id },
      });
      if (!sent.ok) throw new Error(sent.refusal.problems[0]?.message ?? 'the step is open');
    }
    const revision = await changeLife(write, life, { issuedBy: person.id, issuedAt: now });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'issue-kit',
      subjectKind: 'case',
      subjectId: booked.id,
      detail: {
        picks: picks.map(({ id, setId, stockId, itemId, lot, quantity }) =>
          setId === null ? { id, stockId, itemId, lot, quantity } : { id, setId },
        ),
        checkedBy: life.checkedBy,
        revision,
      },
    });
    return { ok: true, value: { revision } };
  });
}

async function problemsOf(write: Queries, kit: KitOnRecord, pick: PickRow, now: string): Promise<Problem[]> {
  const at = (problems: Problem[]) => problems.map((one) => ({ ...one, path: ['picks', pick.id] }));
  if (pick.setId !== null) {
    const [set] = await write.select().from(sets).where(eq(sets.id, pick.setId));
    if (!set) throw new Error(`${pick.setId} is picked and not on record`);
    const facts = { set, booked: kit.booked, rival: null, packId: null, now };
    return at(setPickProblems(await setPickFactsOf(write, facts)));
  }
  const thing = await thingOnRecord(write, { kind: 'stock', stockId: pick.stockId as never }, new Set());
  if (thing.kind !== 'pack') throw new Error(`${pick.stockId} is picked and not on record`);
  const facts = await packFactsOf(write, {
    ...thing,
    saidUseBy: pick.useBy,
    kit,
    quantity: pick.quantity,
    now,
  });
  // what is picked for this case is not free for others, and is there for it
  return at(packProblems({ ...facts, free: facts.free + pick.quantity }));
}
