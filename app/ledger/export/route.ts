import { now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { problemResponse } from '@/app/_server/problem-response';
import { readAsked } from '@/app/ledger/asked';
import { hiddenFrom } from '@/db/queries/bench/blind';
import { exportCsv, exportLines } from '@/db/queries/ledger/exports';
import { newestEntry } from '@/db/queries/ledgerHead';
import { ledgerWords as words } from '@/lib/wording/ledger';

/**
 * The ledger as a file: the entries asked for as CSV, for reading, or with `as=lines` the whole of it as the stand-alone
 * verifier takes it. The file's name carries the head.
 */
export const GET = endpoint('GET /ledger/export', async ({ db, request }) => {
  const params = Object.fromEntries(new URL(request.url).searchParams);
  const whole = params.as === 'lines';
  if (whole && (await hiddenFrom(db)).size > 0) return notWhole();
  const head = await newestEntry(db);
  const parts = whole ? exportLines(db) : exportCsv(db, (await readAsked(db, params)).filter);
  const minute = `${now().slice(0, 16).replaceAll(/[-:]/g, '')}Z`;
  const named = head === null ? 'empty' : `${head.seq}-${head.hash.slice(0, 16)}`;
  return new Response(streamOf(parts), {
    headers: {
      'Content-Type': whole ? 'application/jsonl; charset=utf-8' : 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': `attachment; filename="ledger-${minute}-head-${named}.${whole ? 'jsonl' : 'csv'}"`,
      'Cache-Control': 'no-store',
    },
  });
});

/** Without the entries of the set that is checked blind it would not verify, and with them it would show them. */
const notWhole = () =>
  problemResponse(409, 'Not while you check blind', [{ path: [], code: 'blind', message: words.notWhole }]);

/** A part is made when it is asked for, so that a long ledger is never held whole. */
function streamOf(parts: AsyncGenerator<string>): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  return new ReadableStream({
    async pull(controller) {
      const { value, done } = await parts.next();
      if (done) controller.close();
      else controller.enqueue(encoder.encode(value));
    },
    async cancel() {
      await parts.return(undefined);
    },
  });
}
