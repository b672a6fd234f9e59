import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { pagesOf } from '@/app/api/v1/_reading/list';
import { packPouch } from '@/db/operations/packs/pack-pouch';
import { packsRecorded } from '@/db/queries/api/packsRecorded';
import { packPouchEntry } from '@/lib/packs/entry';

const members = z.looseObject({ proof: proofBody });

/** Closes one item in a pouch by itself. */
export const POST = endpoint(
  'POST /api/v1/packs',
  { body: packPouchEntry.extend({ proof: proofBody }) },
  async (access) => {
    const body = await readBody(access.request, members);
    if (!body.ok) return body.response;
    const { proof, ...entry } = body.value;
    const proven = await prove({ access, who: 'me', secret: proof.secret, meaning: 'iPacked' });
    if (!proven.ok) return outcomeAnswer(proven);
    const { db, person } = access;
    return outcomeAnswer(
      await packPouch({ db, now: now(), newId, person, entry, attestation: proven.value }),
      201,
    );
  },
);

const narrowed = { set: z.string().max(80).optional().describe('The id of a set: its packs alone.') };

/** Sterile packs of sets and of single items, the last closed first. */
export const GET = pagesOf('GET /api/v1/packs', {
  query: narrowed,
  rows: ({ db, query }, { after, limit }) =>
    packsRecorded(db, { setId: query.set ?? null, after: after === null ? null : String(after[0]), limit }),
  keyOf: ({ id }) => [id],
});
