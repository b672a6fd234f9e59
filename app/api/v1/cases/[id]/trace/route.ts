import { oneOf } from '@/app/api/v1/_reading/one';
import { traceCase } from '@/db/queries/trace/caseTrace';

/** What a case had, piece by piece: of which lots it can have been, from which set, pack and load. */
export const GET = oneOf('GET /api/v1/cases/[id]/trace', { what: 'case' }, ({ db, params }) =>
  traceCase(db, params.id),
);
