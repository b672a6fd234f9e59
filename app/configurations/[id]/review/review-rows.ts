import type { Tone } from '@/app/_ui/tone';
import { workingHref } from '@/app/_ui/working';
import { placeOf, type ReviewedLine } from '@/db/queries/review/configurationReview';
import type { LineReview, LineVerdict } from '@/lib/calculations/setReview/schema';
import { EVIDENCE_WORDS, reviewWords as words } from '@/lib/wording/review';
import { LINE_VERDICT_WORDS } from '@/lib/wording/set-review';
import type { ReviewRow } from './line-table';
import type { ProposableLine } from './propose-form';

const TONES: Record<LineVerdict, Tone> = {
  protected: 'neutral',
  keep: 'good',
  keepIfFetched: 'attention',
  notShown: 'unknown',
  pouch: 'attention',
};

const tenth = (share: number) => Math.round(share * 1000) / 10;

/** Lines as the table takes them: figures rounded for reading, never for deciding. */
export function reviewRow({ line, item, evidence, cases, review, input }: ReviewedLine): ReviewRow {
  // of an instrument that could have served, nobody knows how many were asked for
  const counted = evidence === 'recorded' ? review : null;
  return {
    id: line.id,
    place: placeOf(line),
    itemId: line.itemId,
    name: item?.name ?? line.itemId,
    mustHaveClass: line.mustHaveClass,
    kept: line.expected,
    evidence: EVIDENCE_WORDS[evidence],
    cases: review === null ? null : cases,
    uses: review?.uses ?? null,
    ratePercent: review && tenth(review.useRate),
    boundPercent: review && tenth(review.upperBound),
    runsOutCases: counted?.runsOut.cases ?? null,
    runsOutBoundPercent: counted && tenth(counted.runsOut.upperBound),
    keepPence: review?.keepPence ?? null,
    fetchedPence: review?.fetched.penceAtEstimate ?? null,
    fetchedBoundPence: review?.fetched.penceAtBound ?? null,
    roomPence: review?.inRoom.penceAtEstimate ?? null,
    roomBoundPence: review?.inRoom.penceAtBound ?? null,
    enough: counted && enoughWords(counted),
    enoughSeen: counted?.smallestQuantity.seen ?? null,
    verdict: verdictWord(line.mustHaveClass, review),
    tone: review?.verdict ? TONES[review.verdict] : line.mustHaveClass === 3 ? 'neutral' : 'unknown',
    sentence:
      review === null
        ? words.notRecorded
        : evidence === 'planned'
          ? words.byPlans(review.sentence)
          : review.sentence,
    comparison: review?.comparison.sentence ?? null,
    workingHref: input && workingHref('set-review', input),
  };
}

/** A back-up is protected also where nobody knows how it was used. */
function verdictWord(mustHaveClass: number, review: LineReview | null): string {
  if (review?.verdict) return LINE_VERDICT_WORDS[review.verdict];
  return mustHaveClass === 3 ? LINE_VERDICT_WORDS.protected : 'not established';
}

function enoughWords({ smallestQuantity: { seen, fitted, atBound } }: LineReview): string {
  const parts = [
    ...(seen === null ? [] : [`${seen} seen`]),
    ...(fitted === null ? [] : [`${fitted} fitted`]),
    atBound === null ? 'bound: too few cases' : `${atBound} at the bound`,
  ];
  return parts.join('; ');
}

const ORDER: readonly (LineVerdict | null)[] = [
  'pouch',
  'keepIfFetched',
  'notShown',
  null,
  'keep',
  'protected',
];

/** Lines that may be proposed otherwise: no back-ups; those that cost less as a pouch first. */
export function proposableLines(lines: readonly ReviewedLine[]): ProposableLine[] {
  return lines
    .filter(({ line }) => line.mustHaveClass !== 3)
    .map((one) => ({ one, at: ORDER.indexOf(one.review?.verdict ?? null) }))
    .sort((a, b) => a.at - b.at)
    .map(({ one: { line, item, review } }) => ({
      lineId: line.id,
      name: item?.name ?? line.itemId,
      place: placeOf(line),
      expected: line.expected,
      minimum: line.minimum,
      said: verdictWord(line.mustHaveClass, review),
      first: review?.verdict === 'pouch',
    }));
}
