import type { Hole } from '../catalogue/hole';
import type { Item } from '../catalogue/item';
import type { Question, Verdict } from '../fit/question';

/** Whoever answers fit questions: the engine of `lib/fit`. */
export interface Rules {
  ask(question: Question): Verdict;
}

const kept = new WeakMap<Rules, WeakMap<readonly Item[], Map<string, Verdict>>>();
/** Beyond this the answers kept are dropped and asked afresh; a hospital's plans need a few thousand. */
const MOST_KEPT = 50_000;

/**
 * The engine with a memory: the same question about the same designs is asked once for as long as the engine
 * and the catalogue are the same objects. Holes are told apart by their signature, not by their name.
 */
export function askOnce(engine: Rules, catalogue: readonly Item[]): Rules {
  const byCatalogue = kept.get(engine) ?? new WeakMap<readonly Item[], Map<string, Verdict>>();
  kept.set(engine, byCatalogue);
  const answers = byCatalogue.get(catalogue) ?? new Map<string, Verdict>();
  byCatalogue.set(catalogue, answers);
  return {
    ask(question) {
      const key = keyOf(question);
      const known = answers.get(key);
      if (known) return known;
      if (answers.size > MOST_KEPT) answers.clear();
      const answer = engine.ask(question);
      answers.set(key, answer);
      return answer;
    },
  };
}

const signatures = new WeakMap<Hole, string>();

/** Everything about a hole but its name and its place: holes that agree in it get the same answers. */
export function holeSignature(hole: Hole): string {
  const known = signatures.get(hole);
  if (known !== undefined) return known;
  const { id: _id, alongUm: _along, acrossUm: _across, ...rest } = hole;
  const made = JSON.stringify(rest);
  signatures.set(hole, made);
  return made;
}

function keyOf(question: Question): string {
  switch (question.relation) {
    case 'seats':
      return `seats|${question.screw.id}|${holeSignature(question.hole)}|${question.plate?.id}|${purposeOf(question.use)}`;
    case 'guides':
      return `guides|${question.by.sleeve.id}|${question.by.endIndex}|${seatOf(question.seat)}|${question.position}`;
    case 'passes':
      return `passes|${question.tool.id}|${question.by.sleeve.id}|${question.by.endIndex}`;
    case 'pilots':
    case 'glides':
      return `${question.relation}|${question.bit.id}|${question.screw.id}`;
    case 'taps':
      return `taps|${question.tap.id}|${question.screw.id}`;
    case 'countersinks':
      return `countersinks|${question.countersink.id}|${question.screw.id}`;
    case 'measures':
      return `measures|${question.gauge.id}|${question.screw.id}|${purposeOf(question.use)}`;
    case 'turns':
      return `turns|${question.driver.id}|${question.screw.id}`;
    case 'joins':
      return `joins|${question.shank.id}|${question.socket.id}`;
    case 'limits':
      return `limits|${question.limiter.id}|${question.screw.id}`;
    case 'wearsWith':
      return `wearsWith|${question.first.id}|${question.second.id}`;
    case 'sides':
      return `sides|${question.plate.id}|${question.limb}`;
  }
}

function purposeOf(use: Extract<Question, { relation: 'seats' }>['use']): string {
  return use ? `${use.purpose}${use.cortices}` : '';
}

function seatOf(seat: Extract<Question, { relation: 'guides' }>['seat']): string {
  switch (seat.on) {
    case 'hole':
      return `${holeSignature(seat.hole)}|${seat.plate?.id}`;
    case 'bone':
      return 'bone';
    case 'glidingHole':
      return `gliding${seat.diameterUm}`;
  }
}
