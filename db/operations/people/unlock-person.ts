import { eq } from 'drizzle-orm';
import type { Outcome } from '@/lib/identity/refusal';
import { signInDelays } from '../../schema';
import { type AtPerson, atPerson } from './at-person';

/** Forgets a person's wrong tries everywhere, so that they need not wait. */
export function unlockPerson(request: AtPerson): Promise<Outcome<null, never>> {
  return atPerson(request, 'unlock-person', async (write) => {
    await write.delete(signInDelays).where(eq(signInDelays.personKey, request.personId));
    return { ok: true, value: { value: null, detail: {} } };
  });
}
