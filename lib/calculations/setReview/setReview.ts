import { setReviewWords as words } from '@/lib/wording/set-review';
import type { Answer, MissingValue } from '../calculation';
import { casesNeeded, upperBound } from './bound';
import { casesAbove, chanceAbove, fitDemand, smallestQuantity, type UsedIn } from './demand';
import { PUBLISHED_USE } from './published';
import type { Comparison, LineReview, LineVerdict, SetReviewInput, SetReviewOutput } from './schema';

type Line = SetReviewInput['lines'][number];
type Costs = Pick<
  SetReviewInput,
  'keepPencePerPiece' | 'pouchPence' | 'fetchMinutes' | 'theatrePencePerMinute'
>;
type Verdict = LineReview['fetched']['verdict'];

/**
 * Whether each line earns its place (calculations.md §8): how often it is used, how often it could be at most, and what keeping
 * it costs against pouching it, in whole pence for each case. It removes nothing: a back-up is protected whatever its figures say, and
 * where a few cases cannot tell, it says that they cannot.
 */
export function setReview(input: SetReviewInput): Answer<SetReviewOutput> {
  const { cases, risk, confidence } = input;
  if (cases === 0) {
    return {
      outcome: 'notEstablished',
      missing: [{ path: ['cases'], what: words.noCases }],
      known: null,
      working: [],
    };
  }
  const missing: MissingValue[] = [
    ...words.costsMissing.flatMap(({ field, what }) =>
      input[field] === null ? [{ path: [field], what }] : [],
    ),
    ...input.lines.flatMap(({ line, usedIn }, at) =>
      usedIn === null ? [{ path: ['lines', at, 'usedIn'], what: words.usesMissing(line) }] : [],
    ),
  ];
  const lines = input.lines.flatMap((line) =>
    line.usedIn === null ? [] : [reviewLine(line, line.usedIn, input)],
  );
  const share = lines.length === 0 ? null : lines.reduce((all, one) => all + one.useRate, 0) / lines.length;
  const answer: SetReviewOutput = {
    cases,
    casesNeeded: casesNeeded(risk, confidence),
    lines,
    shareUsed:
      share === null
        ? null
        : { share, comparison: compared(share, PUBLISHED_USE.shareUsed, words.shareComparison) },
  };
  const working = lines.flatMap((line) => words.working(line, cases, confidence));
  return missing.length === 0
    ? { outcome: 'answered', answer, working }
    : { outcome: 'notEstablished', missing, known: lines.length === 0 ? null : answer, working };
}

function reviewLine(line: Line, usedIn: UsedIn, input: SetReviewInput): LineReview {
  const { cases, confidence, risk } = input;
  const uses = usedIn.reduce((all, one) => all + one.cases, 0);
  const pieces = usedIn.reduce((all, one) => all + one.pieces * one.cases, 0);
  const useRate = uses / cases;
  const bound = upperBound(uses, cases, confidence);
  // a case that uses it at all fetches as many as such a case has used; one where none has
  const each = uses === 0 ? 1 : pieces / uses;
  const keep = input.keepPencePerPiece === null ? null : input.keepPencePerPiece * line.quantity;
  const fetched = alternative({ useRate, bound, keep, onUse: onUse(input, each, true) });
  const inRoom = alternative({ useRate, bound, keep, onUse: onUse(input, each, false) });
  const verdict = verdictOf(line, fetched.verdict, inRoom.verdict);
  const model = fitDemand(usedIn, cases);
  const above = casesAbove(line.quantity, usedIn);
  return {
    line: line.line,
    uses,
    useRate,
    upperBound: bound,
    keepPence: keep,
    fetched,
    inRoom,
    verdict,
    sentence: words.sentence({ verdict, uses, cases, bound, confidence }),
    runsOut: {
      cases: above,
      seen: above / cases,
      upperBound: upperBound(above, cases, confidence),
      fitted: model && chanceAbove(line.quantity, model),
    },
    model,
    smallestQuantity: smallestQuantity(usedIn, cases, model, { risk, confidence }),
    comparison: compared(useRate, PUBLISHED_USE.pouchBelow, words.pouchComparison),
  };
}

/** Pence a case pays that needs it and has it not in its set; `null` where one of its parts is not stated. */
function onUse({ pouchPence, fetchMinutes, theatrePencePerMinute }: Costs, each: number, fetched: boolean) {
  if (pouchPence === null) return null;
  if (!fetched) return each * pouchPence;
  if (fetchMinutes === null || theatrePencePerMinute === null) return null;
  return each * pouchPence + fetchMinutes * theatrePencePerMinute;
}

function alternative(facts: {
  useRate: number;
  bound: number;
  keep: number | null;
  onUse: number | null;
}): LineReview['fetched'] {
  const { useRate, bound, keep, onUse: pence } = facts;
  if (pence === null) return { penceAtEstimate: null, penceAtBound: null, verdict: null };
  const [atEstimate, atBound] = [useRate * pence, bound * pence];
  return {
    penceAtEstimate: Math.round(atEstimate),
    penceAtBound: Math.round(atBound),
    // judged before rounding: half a penny is not a reason
    verdict: keep === null ? null : atEstimate >= keep ? 'keep' : atBound < keep ? 'pouch' : 'notShown',
  };
}

/** A pouch in the room never costs more than one that is fetched, so its verdict is never more for keeping. */
function verdictOf(line: Line, fetched: Verdict, inRoom: Verdict): LineVerdict | null {
  if (line.mustHaveClass === 3) return 'protected';
  if (line.pouchInRoom === true) return inRoom;
  if (fetched === null) return null;
  if (fetched === 'pouch') return 'pouch';
  if (line.pouchInRoom === false)
    return fetched === 'notShown' && inRoom === 'pouch' ? 'keepIfFetched' : fetched;
  return inRoom === 'pouch' ? 'keepIfFetched' : fetched;
}

function compared(
  share: number,
  { lowest, highest, source }: { lowest: number; highest: number; source: string },
  sentence: (stands: Comparison['stands'], lowest: number, highest: number) => string,
): Comparison {
  const stands = share < lowest ? 'below' : share > highest ? 'above' : 'within';
  return { stands, lowest, highest, sentence: sentence(stands, lowest, highest), source };
}
