import { type KitQuestion, planKit } from './caseKit';
import { keptNeeds } from './keptWays';
import type { CaseKit } from './kit';
import type { Needs } from './need';
import type { StoredPack, StoredSet } from './store';
import { usefulStore } from './usefulStore';

/** Kits kept for one plan; past so many all are let go. */
const MOST_KITS = 64;

const byNeeds = new WeakMap<Needs, Map<string, Promise<CaseKit>>>();

/**
 * The kit of `planKit`, kept for as long as everything it rests on is the same: the plan, rules and catalogue (which the needs
 * stand for), the day and the moment it is needed by, the settings, and all that the store says of sets and packs that hold
 * anything the plan asks for. What others write elsewhere in the store leaves it as it is. The very same kit comes back, and
 * nobody may change it.
 */
export function keptKit(question: KitQuestion): Promise<CaseKit> {
  // a top-up looks at screws of every length on the shelf, and is asked for by one page alone
  if (question.lengthCover === 'withTopUp') return planKit(question);
  const needs = keptNeeds(question.construct, question.catalogue, question.engine);
  const store = usefulStore(needs, question.store);
  const kits = byNeeds.get(needs) ?? new Map<string, Promise<CaseKit>>();
  byNeeds.set(needs, kits);
  const under = restsOn({ ...question, store });
  const known = kits.get(under);
  if (known) return known;
  if (kits.size >= MOST_KITS) kits.clear();
  const made = planKit({ ...question, store });
  kits.set(under, made);
  // what failed is tried again
  made.catch(() => kits.delete(under));
  return made;
}

/** All but the needs, as a text: what sets and packs are is told by numbers, which are the same for the same facts. */
function restsOn({ store, caseDate, needBy, settings, lengthCover, solver }: KitQuestion): string {
  const asked = JSON.stringify([caseDate, needBy, settings, lengthCover, solver === null]);
  return `${asked} ${store.sets.map(numberOfSet).join()} ${store.packs.map(numberOfPack).join()}`;
}

/** Facts numbered at most at once; past so many all are let go, and no number is ever given again. */
const MOST_NUMBERED = 50_000;
const numbers = new Map<string, number>();
let next = 0;

function numberOf(facts: string): number {
  const known = numbers.get(facts);
  if (known !== undefined) return known;
  if (numbers.size >= MOST_NUMBERED) numbers.clear();
  next += 1;
  numbers.set(facts, next);
  return next;
}

const ofContents = new WeakMap<StoredSet['contents'], number>();
const ofSets = new WeakMap<StoredSet, number>();
const ofPacks = new WeakMap<StoredPack, number>();

/** A store is read as new objects, and what lies in sets is often shared: each object is put into words once. */
function numberOfSet(set: StoredSet): number {
  const known = ofSets.get(set);
  if (known !== undefined) return known;
  const { contents, ...rest } = set;
  const held = ofContents.get(contents) ?? numberOf(JSON.stringify(contents));
  ofContents.set(contents, held);
  const number = numberOf(`${held} ${JSON.stringify(rest)}`);
  ofSets.set(set, number);
  return number;
}

function numberOfPack(pack: StoredPack): number {
  const number = ofPacks.get(pack) ?? numberOf(JSON.stringify(pack));
  ofPacks.set(pack, number);
  return number;
}
