import { z } from 'zod';
import { endpoint } from '@/app/_server/enter';
import { actOnFit, fitStep } from '@/app/_server/fit/act-on-fit';
import { noSuch, readBody } from '@/app/_server/outcome-answer';
import { resultAnswer } from '@/app/_server/result-answer';
import { fitRuleVersions } from '@/db/queries/fitRules';
import { ruleId } from '@/lib/identity/ids';

const members = z.strictObject({ id: ruleId, asked: fitStep });

/** Approves, discards or keeps a version of a fit rule, asks for its withdrawal, or agrees to that. */
export const POST = endpoint('POST /api/v1/fit/rules/[code]/acts', { body: members }, async (access) => {
  const versions = await fitRuleVersions(access.db, access.params.code);
  if (versions.length === 0) return noSuch('rule');
  const body = await readBody(access.request, members);
  if (!body.ok) return body.response;
  const { id, asked } = body.value;
  if (!versions.some((version) => version.id === id)) return noSuch('version of that rule');
  return resultAnswer(await actOnFit(access, 'rule', id, asked));
});
