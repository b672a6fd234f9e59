import { z } from 'zod';
import { type Outcome, refusedFor } from '@/lib/identity/refusal';
import { problemsFromZod } from '@/lib/identity/result';
import { indicatorKind, indicatorResult } from '@/lib/loads/load';
import { textProblems } from '@/lib/plans/checkConstruct';
import { plainDate } from '@/lib/quantities/plainDate';
import { loadIndicators } from '../../schema';
import { atLoad, changeLoad, type LoadNow, type LoadRequest } from './at-load';

const blankIsNull = (text: unknown) => (typeof text === 'string' && text.trim() === '' ? null : text);

/** An indicator as a person enters it; blank is not stated. Its result is never pre-filled. */
export const indicatorEntry = z.strictObject({
  kind: indicatorKind,
  lot: z.preprocess(blankIsNull, z.string().trim().max(40).nullable()),
  useBy: z.preprocess(blankIsNull, plainDate.nullable()),
  position: z.preprocess(blankIsNull, z.string().trim().max(60).nullable()),
  result: indicatorResult,
});

interface AddIndicator extends LoadRequest {
  /** As sent from outside; parsed here against `indicatorEntry`. */
  entry: unknown;
}

/** Records an indicator that went with a load, with its lot and use-by, and its result where it is read already. */
export async function addIndicator(
  request: AddIndicator,
): Promise<Outcome<{ revision: number; id: string }, LoadNow>> {
  const { person, now, newId } = request;
  const acting = {
    act: 'makeUpLoad',
    verb: 'record indicators',
    while: ['makingUp', 'running', 'awaitingAcceptance'],
  } as const;
  const parsed = indicatorEntry.safeParse(request.entry);
  return atLoad(request, acting, async (write, load) => {
    if (!parsed.success) return refusedFor(problemsFromZod(parsed.error));
    const entry = parsed.data;
    const unsound = (['lot', 'position'] as const).flatMap((field) =>
      textProblems(entry[field] ?? '', [field]),
    );
    if (unsound.length > 0) return refusedFor(unsound);
    const id = newId('indicator');
    const isRead = entry.result !== 'pending';
    await write.insert(loadIndicators).values({
      ...entry,
      id,
      loadId: load.id,
      readBy: isRead ? person.id : null,
      readAt: isRead ? now : null,
    });
    const changed = await changeLoad(
      write,
      load,
      {},
      {
        action: 'add-indicator',
        person,
        now,
        detail: { indicatorId: id, ...entry },
      },
    );
    return { ok: true, value: { ...changed, id } };
  });
}
