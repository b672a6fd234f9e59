/** How far the kit of a case has come. */
export const LIFE_STAGES = [
  /** Nothing is worked out or fetched yet. */
  'notBegun',
  'picking',
  /** All that can be fetched is; another person checks it. */
  'picked',
  'checked',
  /** It has left the store. */
  'issued',
  'inTheatre',
  /** Of what was issued, nothing is out any more. */
  'back',
  /** The case is cancelled, and picked things still lie with its kit. */
  'toPutBack',
  'cancelled',
] as const;
export type LifeStage = (typeof LIFE_STAGES)[number];

/** What a stage rests on. */
export interface LifeFacts {
  cancelled: boolean;
  /** A list was worked out and the picking begun. */
  begun: boolean;
  pickedAt: string | null;
  checkedAt: string | null;
  issuedAt: string | null;
  takenAt: string | null;
  /** Picks that stand: neither put back nor issued. */
  standing: number;
  /** Picks issued, the kit or a set by itself. */
  issued: number;
  /** Pieces issued that nobody has accounted for yet. */
  stillOut: number;
}

/** Where a kit is, from what is on record alone: nothing here is somebody's word that has to be kept beside it. */
export function stageOf(facts: LifeFacts): LifeStage {
  // a set sent by itself, before any kit was fetched, is all there is of one
  if (facts.issuedAt !== null || (facts.issued > 0 && !facts.begun)) {
    if (facts.stillOut === 0) return 'back';
    return facts.issuedAt !== null && facts.takenAt === null ? 'issued' : 'inTheatre';
  }
  if (facts.cancelled) return facts.standing > 0 ? 'toPutBack' : 'cancelled';
  if (!facts.begun) return 'notBegun';
  if (facts.checkedAt !== null) return 'checked';
  return facts.pickedAt !== null ? 'picked' : 'picking';
}

/** What is done with a kit. */
export const LIFE_ACTS = [
  'makeList',
  'pick',
  'putBack',
  'finish',
  'check',
  'issue',
  'take',
  'fetch',
] as const;
export type LifeAct = (typeof LIFE_ACTS)[number];

/** In which stages each act may be done; a change of what is picked takes the kit back to picking. */
export const ACT_STAGES: Readonly<Record<LifeAct, readonly LifeStage[]>> = {
  makeList: ['notBegun', 'picking', 'picked', 'checked'],
  pick: ['picking'],
  putBack: ['picking', 'picked', 'checked', 'toPutBack'],
  finish: ['picking'],
  check: ['picked'],
  issue: ['checked'],
  take: ['issued'],
  // what theatre asks for while the kit is there: it leaves the store as it is picked
  fetch: ['issued', 'inTheatre'],
};

export const mayDo = (stage: LifeStage, act: LifeAct): boolean => ACT_STAGES[act].includes(stage);
