import { listOf } from '@/app/api/v1/_reading/list';
import { listFitRules } from '@/db/queries/fitRules';

/** Fit rules: the newest version of each. */
export const GET = listOf('GET /api/v1/fit/rules', {
  rows: ({ db }) => listFitRules(db),
  keyOf: ({ code, version }) => [code, version],
});
