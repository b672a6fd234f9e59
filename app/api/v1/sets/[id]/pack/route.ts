import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { packSet } from '@/db/operations/packs/pack-set';
import { setId } from '@/lib/identity/ids';
import { packSetEntry } from '@/lib/packs/entry';

/** The operation parses the rest, so that every fault of it comes from one place. */
const members = z.looseObject({ proof: proofBody });

/** Closes a set: the packer proves who they are and says "I packed it". */
export const POST = endpoint(
  'POST /api/v1/sets/[id]/pack',
  { body: packSetEntry.omit({ setId: true }).extend({ proof: proofBody }) },
  async (access) => {
    const id = setId.safeParse(access.params.id);
    if (!id.success) return noSuch('set');
    const body = await readBody(access.request, members);
    if (!body.ok) return body.response;
    const { proof, ...entry } = body.value;
    const proven = await prove({ access, who: 'me', secret: proof.secret, meaning: 'iPacked' });
    if (!proven.ok) return outcomeAnswer(proven);
    const { db, person, session } = access;
    return outcomeAnswer(
      await packSet({
        db,
        now: now(),
        newId,
        person,
        workstationId: session.workstationId,
        entry: { ...entry, setId: id.data },
        attestation: proven.value,
      }),
      201,
    );
  },
);
