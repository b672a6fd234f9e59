import 'server-only';
import { z } from 'zod';
import { checkSecret, type SecretCheck } from '@/db/operations/people/check-secret';
import { type Claimed, claimedByBadge, claimedById } from '@/db/queries/credentials';
import { personId } from '@/lib/identity/ids';
import { type Outcome, refused, refusedFor } from '@/lib/identity/refusal';
import type { Attestation, Meaning } from '@/lib/people/attestation';
import { badgeCode } from '@/lib/people/badge';
import { isPin } from '@/lib/people/secrets';
import { peopleWords } from '@/lib/wording/people';
import { tokenWords } from '@/lib/wording/tokens';
import { now } from './clock';
import { placeOf } from './place';
import type { Access } from './session';

/** Who proves it: the person of this session, the bearer of a badge, or somebody named. */
const who = z.union([
  z.literal('me'),
  z.strictObject({ badge: z.string().max(200) }),
  z.strictObject({ personId }),
]);

/** The part of a request's body with which somebody proves who they are; `who` is the session's person unless stated. */
export const proofBody = z.strictObject({ who: who.default('me'), secret: z.string().min(1).max(200) });

interface Prove {
  access: Access;
  who: z.infer<typeof who>;
  secret: string;
  meaning: Meaning;
}

/**
 * Proves again who somebody is, for one act and with what they say by it. A password does anywhere; a PIN only at an
 * enrolled workstation. A wrong one says no more than that, and costs the growing wait. A token proves nobody, whatever it
 * sends with it.
 */
export async function prove({ access, who: claim, secret, meaning }: Prove): Promise<Outcome<Attestation>> {
  if (access.token !== null) return refused('notPermitted', tokenWords.noProof);
  const claimed = await claimedBy(access, claim);
  const byPin = isPin(secret);
  const place = await placeOf(claimed.person);
  if (byPin && place.workstationId === null) return wrong(peopleWords.pinOnlyAtWorkstation);
  const check = await checkSecret({
    db: access.db,
    now: now(),
    personKey: claimed.key,
    placeKey: place.key,
    kept: byPin ? claimed.pinHash : claimed.passwordHash,
    secret,
  });
  if (!check.right) return wrong(secretWords(check, byPin ? 'PIN' : 'password'));
  const { person } = claimed;
  if (!person) throw new Error('nobody has no secret');
  const byBadge = typeof claim === 'object' && 'badge' in claim;
  const method = byPin ? (byBadge ? 'badgeAndPin' : 'pin') : 'password';
  return { ok: true, value: { personId: person.id, meaning, method, at: now() } };
}

async function claimedBy({ db, person }: Access, claim: z.infer<typeof who>): Promise<Claimed> {
  if (claim === 'me') return claimedById(db, person.id);
  if ('personId' in claim) return claimedById(db, claim.personId);
  return claimedByBadge(db, badgeCode(claim.badge) ?? '');
}

const secretWords = (check: Exclude<SecretCheck, { right: true }>, what: 'PIN' | 'password') =>
  check.tooSoon ? peopleWords.tooSoon(check.waitSeconds) : peopleWords.wrongSecret(what, check.waitSeconds);

const wrong = (message: string) => refusedFor([{ path: ['secret'], code: 'not-proven', message }]);
