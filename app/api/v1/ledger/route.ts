import { z } from 'zod';
import { pagesOf } from '@/app/api/v1/_reading/list';
import { readLedgerPage } from '@/db/queries/ledger/entries';
import { addDays, plainDate } from '@/lib/quantities/plainDate';
import { instantOf } from '@/lib/theatre/localTime';

const narrowed = {
  thing: z.string().max(80).optional().describe('The id of a thing that the entry names.'),
  person: z.string().max(80).optional().describe('The id of a person that the entry names.'),
  act: z.string().max(80).optional().describe('The act, as entries have it.'),
  from: plainDate.optional().describe('Entered from this day on, as YYYY-MM-DD.'),
  until: plainDate.optional().describe('Entered until this day, itself too.'),
};

/** Entries of the ledger, the newest first; what an entry holds to nobody who counts blind what it is of. */
export const GET = pagesOf('GET /api/v1/ledger', {
  query: narrowed,
  rows: async ({ db, query }, { after, limit }) => {
    const { thing, person, act, from, until } = query;
    const filter = {
      things: [thing, person].filter((one) => one !== undefined),
      action: act ?? null,
      from: from === undefined ? null : instantOf(from, '00:00'),
      to: until === undefined ? null : instantOf(addDays(until, 1), '00:00'),
    };
    const before = after === null ? null : Number(after[0]);
    return (await readLedgerPage(db, filter, { before, limit })).rows;
  },
  keyOf: ({ seq }) => [seq],
});
