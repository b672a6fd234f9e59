import 'server-only';
import { z } from 'zod';
import type { Refused } from '@/app/_server/answer';
import { newId, now } from '@/app/_server/clock';
import type { Access } from '@/app/_server/enter';
import { noSuch, readBody } from '@/app/_server/outcome-answer';
import type { LoadRequest } from '@/db/operations/loads/at-load';
import { loadId } from '@/lib/identity/ids';

/** The revision that was seen; `null` for an act that is safe at any. */
export const seen = { baseRevision: z.number('the revision you saw').int().positive().nullable() };

/** What every act on a load is asked with, from an address and a body; or the answer that says what is wrong. */
export async function readLoadRequest<S extends z.ZodType<{ baseRevision: number | null }>>(
  { db, person, request, params }: Access & { request: Request; params: { id: string } },
  schema: S,
): Promise<{ ok: true; asked: LoadRequest; body: z.output<S> } | { ok: false; response: Refused }> {
  const id = loadId.safeParse(params.id);
  if (!id.success) return { ok: false, response: noSuch('load') };
  const body = await readBody(request, schema);
  if (!body.ok) return body;
  const asked = { db, now: now(), newId, person, loadId: id.data, baseRevision: body.value.baseRevision };
  return { ok: true, asked, body: body.value };
}
