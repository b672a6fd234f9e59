import { and, eq } from 'drizzle-orm';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { programmes } from '@/lib/loads/programme';
import { turnStep } from '@/lib/sets/setState';
import { loadWords as words } from '@/lib/wording/loads';
import { stepWords } from '@/lib/wording/sets';
import { packsOfLoad } from '../../queries/loads/packsOfLoad';
import { loads, sets, sterilisers } from '../../schema';
import { takeStep } from '../turns/take-step';
import {
  atLoad,
  changeLoad,
  type LoadNow,
  type LoadRequest,
  reasonProblems,
  standingInTheWay,
} from './at-load';

interface StartLoad extends LoadRequest {
  /** What the steriliser calls this cycle; blank where it was not noted. */
  cycleNumber: string;
}

/** Starts a load: one runs in a steriliser at a time, and every set in it is then in the steriliser. */
export async function startLoad(request: StartLoad): Promise<Outcome<{ revision: number }, LoadNow>> {
  const { person, now, newId } = request;
  const cycleNumber = request.cycleNumber.trim();
  const acting = { act: 'makeUpLoad', verb: 'start it', while: ['makingUp'] } as const;
  return atLoad(request, acting, async (write, load) => {
    const unsound = reasonProblems(cycleNumber, null, 'cycleNumber');
    if (unsound.length > 0) return refusedFor(unsound);
    const [steriliser] = await write.select().from(sterilisers).where(eq(sterilisers.id, load.steriliserId));
    if (!steriliser) return refused('notFound', words.noSuchSteriliser);
    const problems: Problem[] = [];
    const say = (code: string, message: string) => problems.push({ path: [], code, message });
    if (steriliser.withdrawnAt !== null) say('out-of-service', words.withdrawnSteriliser(steriliser.name));
    const ran = programmes.parse(steriliser.programmes).find(({ name }) => name === load.programme);
    if (!ran) say('no-programme', words.noSuchProgramme(steriliser.name, load.programme));
    const [running] = await write
      .select({ number: loads.number })
      .from(loads)
      .where(and(eq(loads.steriliserId, load.steriliserId), eq(loads.state, 'running')));
    if (running) say('running', words.running(steriliser.name, running.number));
    const inside = await packsOfLoad(write, load.id);
    if (inside.length === 0) say('empty', words.empty(load.number));
    const rows: (typeof sets.$inferSelect)[] = [];
    for (const { setId, id } of inside) {
      if (setId === null) continue;
      const [set] = await write.select().from(sets).where(eq(sets.id, setId));
      if (!set) throw new Error(`${setId} is packed and nowhere`);
      if (set.packId !== id) say('other-pack', words.otherPack(set.code));
      else if (set.step !== 'packed')
        say('not-packed', words.setNotPacked(set.code, stepWords(turnStep.parse(set.step), set.heldBecause)));
      rows.push(set);
    }
    if (problems.length > 0) return standingInTheWay(problems);
    const changed = await changeLoad(
      write,
      load,
      { state: 'running', startedBy: person.id, startedAt: now, cycleNumber: cycleNumber || null, ran },
      {
        action: 'start-load',
        person,
        now,
        detail: { cycleNumber, ran, packs: inside.map(({ number }) => number) },
      },
    );
    for (const set of rows) {
      const taken = await takeStep(write, {
        set,
        to: 'inSteriliser',
        action: 'start-load',
        person,
        now,
        newId,
        detail: { loadId: load.id, loadNumber: load.number },
      });
      if (!taken.ok) throw new Error(taken.refusal.problems[0]?.message ?? 'the step was checked');
    }
    return { ok: true, value: changed };
  });
}
