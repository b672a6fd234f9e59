import { serviceLifeWords as words } from '@/lib/wording/service-life';
import type { Answer, MissingValue } from '../calculation';
import type { LifeThing, ServiceLifeInput, ServiceLifeOutput, ThingLife } from './schema';

/** After which booked case a count reaches its limit: 0 now, `null` not within what is booked. */
type After = number | null;
interface Reach {
  by: 'uses' | 'cycles';
  may: After;
  must: After;
}

/**
 * When marked pieces, and unmarked ones slot by slot, reach the uses and cycles stated for them (calculations.md §12), over the
 * cases that are booked. A limit counts as reached once that many are done: nothing beyond it is planned.
 *
 * In a slot of several unmarked pieces nobody knows which was used: one of them may have had every use, and one must have had
 * its share. One limit that is stated is enough; where none is, or its count is not known, the piece is `notEstablished`.
 */
export function serviceLife({ things }: ServiceLifeInput): Answer<ServiceLifeOutput> {
  const missing: MissingValue[] = [];
  const lives = things.map((thing, at): ThingLife => {
    const found = lifeOf(thing);
    for (const one of found.missing) missing.push({ path: ['things', at, one.field], what: one.what });
    return found.life;
  });
  const working = things.flatMap((thing, at) => {
    const life = lives[at];
    return life ? [words.working(thing, life)] : [];
  });
  return missing.length === 0
    ? { outcome: 'answered', answer: { things: lives }, working }
    : { outcome: 'notEstablished', missing, known: { things: lives }, working };
}

type Lack = { field: 'limitUses' | 'uses' | 'cycles'; what: string };

function lifeOf(thing: LifeThing): { life: ThingLife; missing: Lack[] } {
  const { limitUses, limitCycles, uses, cycles, mostCycles, pieces, booked } = thing;
  const reaches: Reach[] = [];
  const missing: Lack[] = [];
  if (limitUses === null && limitCycles === null)
    missing.push({ field: 'limitUses', what: words.limitMissing(thing.thing) });
  if (limitUses !== null && uses === null)
    missing.push({ field: 'uses', what: words.usesMissing(thing.thing) });
  if (limitCycles !== null && cycles === null)
    missing.push({ field: 'cycles', what: words.cyclesMissing(thing.thing) });
  if (limitUses !== null && uses !== null) {
    const added = booked.map((one) => one.uses);
    reaches.push({
      by: 'uses',
      may: reachedAfter(uses, limitUses, added),
      // by the pigeonhole one piece has reached its limit once all but one use fewer each are used up
      must: reachedAfter(uses, Math.max(0, pieces * (limitUses - 1) + 1), added),
    });
  }
  if (limitCycles !== null && cycles !== null) {
    const added = booked.map((one) => one.cycles);
    reaches.push({
      by: 'cycles',
      may: reachedAfter(mostCycles ?? cycles, limitCycles, added),
      must: reachedAfter(cycles, limitCycles, added),
    });
  }
  const may = soonest(reaches.map((one) => one.may));
  const must = soonest(reaches.map((one) => one.must));
  const state = stateOf(may, must, missing.length > 0);
  const facts = {
    thing: thing.thing,
    state,
    mayAfter: may,
    mustAfter: must,
    afterCase: may === null || may === 0 ? null : (booked[may - 1]?.case ?? null),
    by: may === null ? null : (reaches.find((one) => one.may === may)?.by ?? null),
    usesLeft: limitUses === null || uses === null ? null : Math.max(0, limitUses - uses),
    cyclesLeft:
      limitCycles === null || cycles === null ? null : Math.max(0, limitCycles - (mostCycles ?? cycles)),
  };
  return { life: { ...facts, sentence: words.sentence(facts, thing) }, missing };
}

/** A limit that is reached stays reached whatever else is not known; short of one, what is missing could change the answer. */
function stateOf(may: After, must: After, lacks: boolean): ThingLife['state'] {
  if (must === 0) return 'replaceNow';
  if (lacks) return 'notEstablished';
  if (may === null) return 'within';
  return may === must ? 'replaceAfter' : 'mayBeDue';
}

function reachedAfter(done: number, limit: number, added: readonly number[]): After {
  let sum = done;
  if (sum >= limit) return 0;
  for (const [at, more] of added.entries()) {
    sum += more;
    if (sum >= limit) return at + 1;
  }
  return null;
}

function soonest(all: readonly After[]): After {
  return all.reduce<After>(
    (best, one) => (one === null ? best : best === null ? one : Math.min(best, one)),
    null,
  );
}
