import { oneOf } from '@/app/api/v1/_reading/one';
import { findConfiguration } from '@/db/queries/configurations';

/** One configuration with every version of it, line by line, and the sets that follow it. */
export const GET = oneOf('GET /api/v1/configurations/[id]', { what: 'configuration' }, ({ db, params }) =>
  findConfiguration(db, params.id),
);
