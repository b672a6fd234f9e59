import type { SourceAccount, TableSource } from './account';
import type { PlanDifference } from './differences';
import { isWaste } from './settle';
import { sourceKey, type UsedPiece } from './state';

/** What a record of use leaves open, by name. A record closes with its open questions written in it, never without them. */
export type UseQuestion =
  /** Issued, and nobody has said what became of so many. */
  | { kind: 'stillOut'; key: string; pieces: number }
  /** Opened, said so at the return, and not whether it was implanted. */
  | { kind: 'openedUnsaid'; key: string; pieces: number }
  /** More is recorded than there was. */
  | { kind: 'beyond'; key: string; pieces: number }
  /** The final count has another figure than what the record leaves in the slot. */
  | { kind: 'countDiffers'; key: string; back: number; counted: number }
  /** Pieces that were not found. */
  | { kind: 'notFound'; key: string; pieces: number }
  /** No final count says that what is not named is still in the set. */
  | { kind: 'notCounted'; key: string; setId: string }
  /** Two are recorded for one place. */
  | { kind: 'severalHere'; key: string }
  /** Wasted, and the hospital asks why; nobody has said. */
  | { kind: 'noReason'; key: string; pieces: number }
  /** A question of a count in theatre of this case that two people have not settled. */
  | { kind: 'countQuestion'; key: string; questionId: string };

/** One text for each question, the same as long as nothing of it changes: what a person agreed to is known again by it. */
export const questionText = (question: UseQuestion): string =>
  Object.entries(question)
    .map(([name, value]) => `${name}=${value}`)
    .join(' ');

export interface QuestionFacts {
  sources: readonly TableSource[];
  accounts: readonly SourceAccount[];
  differences: readonly PlanDifference[];
  /** Open questions of counts in theatre of the case. */
  countQuestions: readonly { id: string; setId: string | null; lineId: string | null }[];
  /** Sets that came back unopened: nothing of them is to be counted. */
  unopenedSets: ReadonlySet<string>;
  pieces: readonly UsedPiece[];
  /** Whether the hospital asks why something was wasted. */
  asksReason: boolean;
}

/** All that stays open if the record were closed now. */
export function questionsOf(facts: QuestionFacts): UseQuestion[] {
  const { sources, accounts, differences, countQuestions, unopenedSets } = facts;
  const asked = new Set(countQuestions.map(({ setId, lineId }) => `${setId} ${lineId}`));
  const questions: UseQuestion[] = [];
  for (const [at, account] of accounts.entries()) {
    const source = sources[at];
    const { key } = account;
    if (!source) continue;
    const unsaid = account.openedUnsaid;
    if (account.open > unsaid) questions.push({ kind: 'stillOut', key, pieces: account.open - unsaid });
    if (unsaid > 0) questions.push({ kind: 'openedUnsaid', key, pieces: unsaid });
    if (account.beyond > 0) questions.push({ kind: 'beyond', key, pieces: account.beyond });
    // where a count in theatre asks about it already, that is the question
    if (account.notFound > 0 && !asked.has(key))
      questions.push({ kind: 'notFound', key, pieces: account.notFound });
    if (account.count?.verdict === 'differs' && account.beyond === 0 && !asked.has(key))
      questions.push({
        kind: 'countDiffers',
        key,
        back: account.back ?? 0,
        counted: account.count.counted ?? 0,
      });
  }
  for (const setId of setsOf(sources)) {
    if (unopenedSets.has(setId)) continue;
    const own = sources.filter((one) => one.kind === 'slot' && one.setId === setId);
    if (own.every((one) => one.kind === 'slot' && one.counted === null))
      questions.push({ kind: 'notCounted', key: setId, setId });
  }
  for (const one of differences)
    if (one.kind === 'severalHere') questions.push({ kind: 'severalHere', key: placeText(one.at) });
  if (facts.asksReason)
    for (const source of sources) {
      const key = sourceKey(source);
      const unsaid = facts.pieces.filter(
        (piece) =>
          sourceKey(piece.source) === key &&
          piece.reasonId === null &&
          isWaste(piece.outcome, source.reusable),
      );
      const pieces = unsaid.reduce((sum, { quantity }) => sum + quantity, 0);
      if (pieces > 0) questions.push({ kind: 'noReason', key, pieces });
    }
  for (const { id } of countQuestions) questions.push({ kind: 'countQuestion', key: id, questionId: id });
  return questions;
}

const setsOf = (sources: readonly TableSource[]): string[] => [
  ...new Set(sources.flatMap((one) => (one.kind === 'slot' ? [one.setId] : []))),
];

const placeText = (at: Extract<PlanDifference, { kind: 'severalHere' }>['at']): string =>
  at.kind === 'free' ? at.screw : at.kind === 'plate' ? at.plate : `${at.plate}/${at.hole}`;
