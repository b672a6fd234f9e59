import { drillingPosition } from '../catalogue/fittings';
import type { Hole } from '../catalogue/hole';
import type { Item } from '../catalogue/item';
import type { FitEngine } from './engine';
import type { ScrewUse, Verdict } from './question';
import { PARTNERS, type PairChoice, type PairQuestion, type Partner, pairQuestions } from './try-pair';

/** A pair as an address names it: by codes, and what narrows the questions; empty or left out where nothing does. */
export interface NamedPair {
  a: string;
  b: string;
  hole?: string;
  use?: string;
  position?: string;
}

/** One of two things: an item, what stands for no item, or none of that code. */
export type Side = Item | Partner | null;

export function sideOf(code: string, catalogue: readonly Item[]): Side {
  if ((PARTNERS as readonly string[]).includes(code)) return code as Partner;
  return catalogue.find((item) => item.code === code) ?? null;
}

/** Every question of a pair; `null` where two things are not named, of which at most one is no item. */
export function questionsOf(
  engine: FitEngine,
  [a, b]: readonly [Side, Side],
  named: Pick<NamedPair, 'hole' | 'use' | 'position'>,
): PairQuestion[] | null {
  if (a === null || b === null) return null;
  const choice: PairChoice = {
    holeId: named.hole || null,
    use: purposeOf(named.use ?? ''),
    position: positionOf(named.position ?? ''),
  };
  if (typeof a === 'object') return pairQuestions(engine, a, b, choice);
  return typeof b === 'object' ? pairQuestions(engine, b, a, choice) : [];
}

/** `lag-1`: its purpose and the cortices it holds in. */
function purposeOf(text: string): ScrewUse | null {
  const match = /^(neutral|offset|lag|locked)-([12])$/.exec(text);
  return match ? { purpose: match[1] as ScrewUse['purpose'], cortices: Number(match[2]) as 1 | 2 } : null;
}

function positionOf(text: string): PairChoice['position'] {
  const parsed = drillingPosition.safeParse(text);
  return parsed.success ? parsed.data : null;
}

/** The answer to one question of a pair, and the part of the two things it is about. */
export interface PairVerdict extends Verdict {
  /** From 1, in the order of the questions. */
  number: number;
  holes: Hole[];
  /** Which end of a sleeve, from 1; `null`: it is about none. */
  end: number | null;
}

export const verdictsOf = (engine: FitEngine, questions: readonly PairQuestion[]): PairVerdict[] =>
  questions.map(({ question, holes, end }, at) => ({ number: at + 1, holes, end, ...engine.ask(question) }));
