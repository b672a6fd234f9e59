import { listOf } from '@/app/api/v1/_reading/list';
import { listPeopleOnFile } from '@/db/queries/peopleOnFile';

/** Everybody who works or worked here, with the ways in they have; never a secret. */
export const GET = listOf('GET /api/v1/people/on-file', {
  rows: ({ db }) => listPeopleOnFile(db),
  keyOf: ({ id }) => [id],
});
