import { type Target, target } from '../target';
import { type ApiAnswer, judged } from './judge';
import type { Known } from './known';
import { type ApiRequest, requests, type Tried } from './requests';

export const API_RUNS = { long: 50_000, short: 250 };

/** What every address that takes a body is given: done, or refused in words, and always as it is described. */
export const apiTarget = (
  { known, operations }: { known: Known; operations: readonly Tried[] },
  send: (request: ApiRequest) => Promise<ApiAnswer>,
): Target =>
  target({
    name: 'api',
    unit: 'bodies of every address',
    runs: API_RUNS,
    arbitrary: requests(known, operations),
    hold: async (request) => judged(request, await send(request)),
  });
