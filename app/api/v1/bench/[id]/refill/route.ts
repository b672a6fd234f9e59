import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { recordEntry } from '@/db/operations/bench/record-entry';
import { findPerson } from '@/db/queries/bench/person';
import { sentEntry } from '@/lib/bench/act';
import { countId } from '@/lib/identity/ids';

const members = z.strictObject({
  entry: z.looseObject({ id: z.string().max(80), act: z.looseObject({ kind: z.literal('refill') }) }),
  /** The second person, who looked at the piece too. */
  second: proofBody.optional(),
});

/**
 * Puts pieces into a line: off the shelf and into the count in one write. Its own address, because a second person's
 * secret is never kept in a browser to be sent later. Sent again with the same id it is done once.
 */
export const POST = endpoint(
  'POST /api/v1/bench/[id]/refill',
  { body: members.extend({ entry: sentEntry }) },
  async (access) => {
    const { db, person, session, request, params } = access;
    const id = countId.safeParse(params.id);
    if (!id.success) return noSuch('count');
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { entry, second: proof } = body.value;
    const attested = proof ? await prove({ access, ...proof, meaning: 'iRefilled' }) : null;
    if (attested && !attested.ok) return outcomeAnswer(attested);
    const second = attested
      ? { attestation: attested.value, person: await findPerson(db, attested.value.personId) }
      : null;
    return outcomeAnswer(
      await recordEntry({ db, now: now(), person, sessionId: session.id, countId: id.data, entry, second }),
    );
  },
);
