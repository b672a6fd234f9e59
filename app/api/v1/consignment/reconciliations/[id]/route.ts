import { z } from 'zod';
import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { proofBody, prove } from '@/app/_server/prove';
import { oneOf } from '@/app/api/v1/_reading/one';
import { closeReconciliation } from '@/db/operations/consignment/close-reconciliation';
import { explainDifference } from '@/db/operations/consignment/explain-difference';
import { findPerson } from '@/db/queries/bench/person';
import { findReconciliation } from '@/db/queries/consignment/reconciliations';
import { differenceReason } from '@/lib/consignment/entries';
import { reconciliationId } from '@/lib/identity/ids';

const body = z.strictObject({
  baseRevision: z.number().int().min(1),
  act: z.discriminatedUnion('kind', [
    differenceReason,
    z.strictObject({ kind: z.literal('close'), proof: proofBody, second: proofBody.nullable() }),
  ]),
});

/** Writes why a difference is there, or closes the reconciliation. */
export const POST = endpoint(
  'POST /api/v1/consignment/reconciliations/[id]',
  { body: body },
  async (access) => {
    const { db, person, request, params } = access;
    const id = reconciliationId.safeParse(params.id);
    if (!id.success) return noSuch('reconciliation');
    const read = await readBody(request, body);
    if (!read.ok) return read.response;
    const { act, baseRevision } = read.value;
    const asked = { db, person, reconciliationId: id.data, baseRevision };
    if (act.kind === 'explain')
      return outcomeAnswer(
        await explainDifference({ ...asked, now: now(), lineId: act.lineId, because: act.because }),
      );
    const meaning = 'iCloseThisReconciliation' as const;
    const mine = await prove({ access, ...act.proof, meaning });
    if (!mine.ok) return outcomeAnswer(mine);
    const other = act.second === null ? null : await prove({ access, ...act.second, meaning });
    if (other !== null && !other.ok) return outcomeAnswer(other);
    const second =
      other === null
        ? null
        : { attestation: other.value, person: await findPerson(db, other.value.personId) };
    return outcomeAnswer(
      await closeReconciliation({ ...asked, now: now(), attestation: mine.value, second }),
    );
  },
);

/** One reconciliation, lot by lot, with what nothing explains. */
export const GET = oneOf(
  'GET /api/v1/consignment/reconciliations/[id]',
  { what: 'reconciliation' },
  ({ db, params }) => findReconciliation(db, params.id),
);
