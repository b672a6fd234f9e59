import { z } from 'zod';
import { drawReference, HOSPITAL_LETTERS } from '@/app/_server/case-references';
import { newId, now } from '@/app/_server/clock';
import { endpoint } from '@/app/_server/enter';
import { jsonAnswer } from '@/app/_server/json-answer';
import { outcomeAnswer, readBody } from '@/app/_server/outcome-answer';
import { planAgain } from '@/app/_server/plan-again';
import { viewOf } from '@/app/cases/import/view-of';
import { importList } from '@/db/operations/theatre/import-list';
import { roundTimes } from '@/db/queries/turns/roundTimes';
import { refusedFor } from '@/lib/identity/refusal';
import { IMPORT_FIELDS } from '@/lib/theatre/import/fields';
import { readListFile } from '@/lib/theatre/import/readList';
import { IMPORT_LIMITS } from '@/lib/theatre/import/table';
import { urgency } from '@/lib/theatre/surgicalCase';
import { fileFaultWords } from '@/lib/wording/list-import';

const members = z.strictObject({
  /** The file, in base64. */
  file: z.base64().max(Math.ceil(IMPORT_LIMITS.bytes / 3) * 4 + 4),
  choices: z.strictObject({
    sheet: z.string().max(200).nullable(),
    columns: z.partialRecord(z.enum(IMPORT_FIELDS), z.number().int().min(1).nullable()),
    dateOrder: z.enum(['dayFirst', 'monthFirst']).nullable(),
    repeatedHour: z.enum(['first', 'second']).nullable(),
    urgencyWhereNone: urgency.nullable(),
  }),
  /** `null` tries it; else the digest of the try that was seen. */
  digest: z.string().length(64).nullable(),
});

/** Tries a theatre list, or imports it as it was tried. Nothing of the file is kept. */
export const POST = endpoint(
  'POST /api/v1/cases/import',
  { body: members },
  async ({ db, person, request }) => {
    const body = await readBody(request, members);
    if (!body.ok) return body.response;
    const { file, choices, digest } = body.value;
    const bytes = new Uint8Array(Buffer.from(file, 'base64'));
    const read = await readListFile(bytes, choices);
    if (!read.ok) {
      const { fault } = read;
      return outcomeAnswer(
        refusedFor([{ path: ['file'], code: fault.code, message: fileFaultWords(fault) }]),
      );
    }
    const { dateOrder, repeatedHour, urgencyWhereNone } = choices;
    const at = now();
    const outcome = await importList({
      db,
      person,
      now: at,
      newId,
      draw: drawReference,
      hospitalLetters: HOSPITAL_LETTERS,
      round: await roundTimes(db),
      bytes,
      list: read.list,
      choices: { dateOrder, repeatedHour, urgencyWhereNone },
      digest,
    });
    if (!outcome.ok) return outcomeAnswer(outcome);
    const { done } = outcome.value;
    const changed = done !== null && done.booked.length + done.moved.length > 0;
    const planned = changed ? await planAgain(db, person, 'import-list') : null;
    return jsonAnswer({
      ...viewOf(outcome.value, read.list, choices, at),
      planned: planned?.sentence ?? null,
    });
  },
);
