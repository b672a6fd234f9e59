import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { outcomeAnswer } from '@/app/_server/outcome-answer';
import { importCycle } from '@/db/operations/loads/import-cycle';
import { readLoadRequest, seen } from '../../at-load';

const members = z.strictObject({
  ...seen,
  text: z.string().max(900_000),
  fileName: z.string().max(200).nullable(),
  dryRun: z.boolean(),
});

/** Imports the record of a cycle, or says what it would be. */
export const POST = endpoint('POST /api/v1/loads/[id]/cycle', { body: members }, async (access) => {
  const read = await readLoadRequest(access, members);
  if (!read.ok) return read.response;
  return outcomeAnswer(
    await importCycle({
      ...read.asked,
      text: read.body.text,
      fileName: read.body.fileName,
      dryRun: read.body.dryRun,
    }),
  );
});
