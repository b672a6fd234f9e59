import { lineKey } from '@/lib/caseLife/list';
import { matchPicks, stillToPick } from '@/lib/caseLife/match';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Problem } from '@/lib/identity/result';
import { textProblems } from '@/lib/plans/checkConstruct';
import { pickWords as words } from '@/lib/wording/case-life';
import { turnWords } from '@/lib/wording/turns';
import { appendLedger } from '../../ledger';
import { pickNames } from '../../queries/caseLife/names';
import { meetingLines, stands } from '../../queries/caseLife/standing';
import { atKit, changeLife, type KitStepRequest, planProblem } from './at-kit';

interface FinishPicking extends KitStepRequest {
  /** Why it goes on without what is still on the list; `null` where nothing is. */
  note: string | null;
}

/** Says that the kit is picked: all that is on the list, or all but what is said why. Another person then checks it. */
export async function finishPicking(request: FinishPicking): Promise<Outcome<{ revision: number }, never>> {
  const { now, person } = request;
  const note = request.note?.trim() || null;
  const acting = {
    act: 'pickKit',
    verb: 'pick kits',
    step: 'finish',
    isRepeat: (life: { pickedBy: string | null }) => life.pickedBy === person.id,
  } as const;
  return atKit(request, acting, async (write, kit) => {
    const { booked, life, list } = kit;
    if (!life) throw new Error(`the kit of ${booked.id} is being picked and has no life`);
    const changed = await planProblem(write, kit);
    if (changed) return refused('frozen', changed);
    const picks = kit.picks.filter(stands);
    const matched = matchPicks(list, meetingLines(kit));
    const left = stillToPick(matched);
    const names = await pickNames(write, picks);
    const problems: Problem[] = [];
    const add = (code: string, message: string, path: string[] = []) =>
      problems.push({ path, code, message });
    if (picks.length === 0) add('nothing-picked', words.nothingPicked);
    const surplus = matched.surplus.filter(({ pickId }) => picks.some(({ id }) => id === pickId));
    if (surplus.length > 0)
      add('surplus', words.surplusFirst(surplus.map(({ pickId }) => names.get(pickId) ?? pickId)));
    if (left.length > 0 && note === null) add('needed', words.leftNeedsWhy(left.length), ['note']);
    if (note !== null && note.length > 400) add('too-long', turnWords.tooLong, ['note']);
    problems.push(...textProblems(note ?? '', ['note']));
    if (problems.length > 0) return refusedFor(problems);
    const kept = left.length > 0 ? note : null;
    const revision = await changeLife(write, life, { pickedBy: person.id, pickedAt: now, pickedNote: kept });
    await appendLedger(write, {
      doneAt: now,
      enteredAt: now,
      personId: person.id,
      action: 'finish-picking',
      subjectKind: 'case',
      subjectId: booked.id,
      detail: {
        picks: picks.map(({ id }) => id),
        without: left.map(({ line, picked, wanted }) => ({ line: lineKey(line), picked, wanted })),
        ...(kept === null ? {} : { note: kept }),
        revision,
      },
    });
    return { ok: true, value: { revision } };
  });
}
