import { z } from 'zod';
import { type Answer, carrying } from '@/app/_server/answer';
import { type FhirJson, fhirEndpoint, fhirResponse } from '@/app/_server/fhir/door';
import { collection, resourceLines } from '@/app/_server/fhir/export';
import { isOffered, OFFERED_TYPES, type OfferedType } from '@/lib/fhir/offered';
import { operationOutcome } from '@/lib/fhir/operationOutcome';
import { fhirProblemWords as words } from '@/lib/wording/fhir';

const wanted = z.object({
  _type: z.string().optional().describe('Types, with commas between them; every one when left out.'),
  as: z
    .enum(['collection', 'ndjson'])
    .optional()
    .describe('One Bundle, or the resources of one type, one a line.'),
});

const refused = (name: string, code: string, message: string) =>
  fhirResponse(operationOutcome([{ path: [name], code, message }]), 400);

/**
 * Everything as a file: a Bundle of all types, or of those in `_type`; with `as=ndjson` the resources of one type, one a line.
 */
export const GET = fhirEndpoint('GET /api/v1/fhir/export', { query: wanted }, ({ db, frame, request }) => {
  const { searchParams } = new URL(request.url);
  const named = searchParams.get('_type')?.split(',') ?? [...OFFERED_TYPES];
  const unknown = named.find((type) => !isOffered(type));
  if (unknown !== undefined) return refused('_type', 'not-supported', words.noSuchType(unknown));
  const types = named as OfferedType[];
  const as = searchParams.get('as') ?? 'collection';
  if (as !== 'ndjson' && as !== 'collection') return refused('as', 'value', words.notExported(as));
  const [only] = types;
  if (as === 'ndjson' && (types.length !== 1 || only === undefined))
    return refused('_type', 'value', words.oneTypeALine);
  const minute = `${frame.now.slice(0, 16).replaceAll(/[-:]/g, '')}Z`;
  return as === 'ndjson' && only !== undefined
    ? download(resourceLines(db, frame, only), 'application/fhir+ndjson', `${only}-${minute}.ndjson`)
    : download(collection(db, frame, types), 'application/fhir+json', `fhir-${minute}.json`);
});

/** Sent as it is written, so that nobody waits for all of it and nothing holds all of it. */
function download(parts: AsyncGenerator<string>, type: string, name: string): Answer<FhirJson> {
  const encoder = new TextEncoder();
  const stream = new ReadableStream<Uint8Array>({
    async pull(controller) {
      const { done, value } = await parts.next();
      if (done) controller.close();
      else controller.enqueue(encoder.encode(value));
    },
    async cancel() {
      await parts.return(undefined);
    },
  });
  return carrying(
    new Response(stream, {
      headers: {
        'Content-Type': `${type}; charset=utf-8`,
        'Content-Disposition': `attachment; filename="${name}"`,
        'Cache-Control': 'no-store, no-transform',
      },
    }),
  );
}
