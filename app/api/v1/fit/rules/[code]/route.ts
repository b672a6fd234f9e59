import { listOf } from '@/app/api/v1/_reading/list';
import { fitRuleVersions } from '@/db/queries/fitRules';

/** Every version of one fit rule, the newest first. */
export const GET = listOf('GET /api/v1/fit/rules/[code]', {
  rows: async ({ db, params }) => {
    const versions = await fitRuleVersions(db, params.code);
    return versions.length === 0 ? null : versions;
  },
  keyOf: ({ version, id }) => [version, id],
  newestFirst: true,
});
