import { oneOf } from '@/app/api/v1/_reading/one';
import { readLedgerPage } from '@/db/queries/ledger/entries';

/** One entry of the ledger, by its number. */
export const GET = oneOf('GET /api/v1/ledger/[seq]', { what: 'entry' }, async ({ db, params }) => {
  const seq = Number(params.seq);
  if (!Number.isSafeInteger(seq)) return null;
  const all = { things: [], action: null, from: null, to: null };
  const { rows } = await readLedgerPage(db, all, { before: seq + 1, limit: 1 });
  return rows.find((row) => row.seq === seq) ?? null;
});
