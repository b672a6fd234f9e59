import { z } from 'zod';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { noSuch, outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { viewOf } from '@/app/exchange/[list]/view-of';
import { bringIn } from '@/db/operations/exchange/bring-in';
import { EXCHANGE_LIMITS } from '@/lib/exchange/limits';
import { LISTS, listKindOf } from '@/lib/exchange/lists/lists';
import { readExchangeFile } from '@/lib/exchange/readFile';
import { refused, refusedFor } from '@/lib/identity/refusal';
import { ENCODINGS } from '@/lib/lists/decodeText';
import { may } from '@/lib/people/permissions';
import { exchangeWords, fileWords } from '@/lib/wording/exchange';

const keys = z.array(z.string().max(80)).max(200);
const digest = z.string().regex(/^[0-9a-f]{64}$/);

const members = z.strictObject({
  /** The file, in base64. */
  file: z.base64().max(Math.ceil(EXCHANGE_LIMITS.bytes / 3) * 4 + 4),
  choices: z.strictObject({
    sheet: z.string().max(200).nullable(),
    encoding: z.enum(ENCODINGS).nullable(),
    columns: z.record(z.string().max(60), z.number().int().min(1).max(EXCHANGE_LIMITS.columns).nullable()),
    dateOrder: z.enum(['dayFirst', 'monthFirst']).nullable(),
    decimal: z.enum(['point', 'comma']).nullable(),
    repaired: keys,
    kept: keys,
    empty: z.enum(['keep', 'clear']),
    newMakers: keys,
    more: z.enum(['found', 'enteredTooFew']).nullable(),
    fewer: z.enum(['notFound', 'enteredTooMany']).nullable(),
    note: z.string().max(300),
  }),
  /** `null` tries it; else what the try that was seen came to. */
  seen: z
    .strictObject({ digest, marks: z.array(z.string().regex(/^[0-9a-f]{16}$/)).max(EXCHANGE_LIMITS.rows) })
    .nullable(),
});

/** A file in base64 with what was seen of it; no list is longer. */
const MOST_BYTES = 6_000_000;

/** Tries a list, or brings it in as it was tried. Nothing of the file is kept. */
export const POST = endpoint(
  'POST /api/v1/exchange/[list]',
  { body: members },
  async ({ db, person, params, request }) => {
    const list = listKindOf(params.list);
    if (list === null) return noSuch('list');
    // before the file is read: reading it is work
    if (!may(person, LISTS[list].bringIn))
      return outcomeAnswer(refused('notPermitted', exchangeWords.mayNot(person.name)));
    const body = await readBody(request, members, MOST_BYTES);
    if (!body.ok) return body.response;
    const { choices, seen } = body.value;
    const bytes = new Uint8Array(Buffer.from(body.value.file, 'base64'));
    const read = await readExchangeFile(bytes, LISTS[list], choices);
    if (!read.ok) {
      const { fault } = read;
      return outcomeAnswer(refusedFor([{ path: ['file'], code: fault.code, message: fileWords(fault) }]));
    }
    const at = now();
    const { file } = read;
    const outcome = await bringIn({ db, now: at, newId, person, list, bytes, file, choices, seen });
    if (!outcome.ok) return outcomeAnswer(outcome);
    return jsonAnswer(viewOf(outcome.value, LISTS[list], { file, choices, at }));
  },
);
