/**
 * How often things may be asked for. `address`: by everybody behind one address together; `person`: with one session or
 * token. `burst` at once, `perSecond` from then on. DEVELOPERS.md reasons the figures.
 * @typedef {{ burst: number, perSecond: number }} Rate
 * @typedef {'signIn' | 'record' | 'heavy' | 'other'} Kind
 */

/** @type {Record<Kind, { address: Rate, person: Rate }>} */
export const RATES = {
  signIn: { address: { burst: 80, perSecond: 2 }, person: { burst: 80, perSecond: 2 } },
  record: { address: { burst: 3000, perSecond: 150 }, person: { burst: 300, perSecond: 15 } },
  heavy: { address: { burst: 900, perSecond: 15 }, person: { burst: 150, perSecond: 3 } },
  other: { address: { burst: 6000, perSecond: 400 }, person: { burst: 2000, perSecond: 80 } },
};

/** Where a password, PIN, badge or first code is tried. */
const SIGN_IN = /^\/api\/v1\/people\/(sign-in|badge|first-run)$/;
/** What people do at the bench, in theatre and with a scanner, one small entry at a time. */
const RECORD = /^\/api\/v1\/scans$|\/(entries|acts|figures|picks)$/;
/** What takes the one thread for long: papers, files, lists that come in, planning. */
const HEAVY =
  /\/(paper|export|file|report|touched-report|label|labels|count-sheet|pick-list|lay-up-card|load-list|request-letter|return-note)$|\.(csv|json|xlsx)$/;
const HEAVY_API =
  /^\/api\/v1\/(exchange\/|cases\/import$|changes\/trials$|theatre-list\/(plan|proposals)$|calculations\/|emergency$|cases\/\[id\]\/ways-out$|recalls$|restock$)/;
/** What is read by the API and worked out anew for whoever asks: kits, what serves an emergency, reports, reviews, traces. */
const HEAVY_READS =
  /^\/api\/v1\/(cases\/\[id\]\/kit$|emergency\/(answer|taking)$|configurations\/\[id\]\/review$|reports\/|restock\/(backtest|gaps|refills)$|trace\/|loads\/\[id\]\/touched$|work$)/;
const HEAVY_PAGES = /^\/(restock\/backtest|trace\/result|fit\/(table|check))$/;

/**
 * Which of the rates holds for a request.
 * @param {string} method
 * @param {string} route as declared: `/sets/[id]`
 * @returns {Kind}
 */
export function kindOf(method, route) {
  const writes = method !== 'GET' && method !== 'HEAD';
  if (writes && SIGN_IN.test(route)) return 'signIn';
  if (HEAVY.test(route) || HEAVY_PAGES.test(route)) return 'heavy';
  if (!writes && HEAVY_READS.test(route)) return 'heavy';
  if (HEAVY_API.test(route) && (writes || /calculations|ways-out/.test(route))) return 'heavy';
  if (writes && RECORD.test(route)) return 'record';
  return 'other';
}

/** No more are remembered: whoever changes addresses to be forgotten gains a burst, and no memory of ours. */
const MOST_REMEMBERED = 20_000;

/**
 * Token buckets by name. A bucket that is full again is the same as none.
 * @param {{ now: () => number, times?: number }} how `now` in milliseconds; `times` the usual rates
 */
export function rateLimits({ now, times = 1 }) {
  /** @type {Map<string, { tokens: number, at: number }>} */
  const buckets = new Map();
  /** @param {string} name @param {Rate} rate @returns {number} seconds to wait, 0 where it is let through */
  const take = (name, { burst, perSecond }) => {
    const at = now();
    const most = burst * times;
    const bucket = buckets.get(name) ?? { tokens: most, at };
    const gone = Math.max(0, at - bucket.at) / 1000;
    bucket.tokens = Math.min(most, bucket.tokens + gone * perSecond * times);
    bucket.at = at;
    buckets.delete(name);
    buckets.set(name, bucket);
    if (buckets.size > MOST_REMEMBERED) buckets.delete(/** @type {string} */ (buckets.keys().next().value));
    if (bucket.tokens >= 1) {
      bucket.tokens -= 1;
      return 0;
    }
    return Math.max(1, Math.ceil((1 - bucket.tokens) / (perSecond * times)));
  };
  return {
    /**
     * @param {{ kind: Kind, address: string, person: string | null }} asked `person`: a digest of the session or token
     * @returns {number} seconds to wait before asking again, 0 where it is let through
     */
    wait({ kind, address, person }) {
      const rates = RATES[kind];
      const own = person === null ? 0 : take(`${kind} person ${person}`, rates.person);
      return own > 0 ? own : take(`${kind} address ${address}`, rates.address);
    },
    remembered: () => buckets.size,
  };
}
