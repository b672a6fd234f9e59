import { expect, test } from 'vitest';
import { ACTIONS, type Action, ENDPOINTS, type Endpoint } from '@/lib/people/access';

/**
 * Every server action of the program, and the address of the API by which another system does the same. An action without one
 * fails here: beside the screens there is nothing that they alone can do.
 */
const BY_API: Record<Action, Endpoint> = {
  'app/cases/new/book-case-action.ts bookCaseAction': 'POST /api/v1/cases',
  'app/fit/actions.ts act approve': 'POST /api/v1/fit/rules/[code]/acts',
  'app/fit/actions.ts act askWithdrawal': 'POST /api/v1/fit/rules/[code]/acts',
  'app/fit/actions.ts act discard': 'POST /api/v1/fit/exceptions/[id]/acts',
  'app/fit/actions.ts act keep': 'POST /api/v1/fit/rules/[code]/acts',
  'app/fit/actions.ts act withdraw': 'POST /api/v1/fit/exceptions/[id]/acts',
  'app/fit/actions.ts draftException': 'POST /api/v1/fit/exceptions',
  'app/fit/actions.ts draftRule': 'POST /api/v1/fit/rules',
  'app/fit/try-rule.ts tryRule': 'POST /api/v1/fit/rule-tries',
};

test('every server action has an address of the API beside it, open to whom the action is', () => {
  expect(Object.keys(BY_API).sort()).toEqual(Object.keys(ACTIONS).sort());
  for (const [action, endpoint] of Object.entries(BY_API) as [Action, Endpoint][]) {
    expect(ENDPOINTS).toHaveProperty([endpoint]);
    // what has several steps at one address asks for each in its operation
    const reach = ENDPOINTS[endpoint];
    expect([action, reach === 'readHospital' || reach === ACTIONS[action]]).toEqual([action, true]);
  }
});
