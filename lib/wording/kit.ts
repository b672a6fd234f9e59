import { never } from '../identity/result';
import type { CaseKit, LengthCoverFigure, Proof, Short, Tie } from '../kits/kit';
import { writeMm } from '../quantities/length';
import { type ItemName, readyWords } from './kit-parts';
import { isMustHave, shortName, shortSentence } from './kit-shorts';
import { countWord, listWords, percentWord } from './numbers';

/** How a kit stands, for people: a word and how it weighs. The tone goes with a shape on screen. */
export interface VerdictWords {
  tone: 'good' | 'attention' | 'stop' | 'unknown';
  word: string;
  sentence: string;
}

/** The answer in one word and one sentence. */
export function verdictWords(kit: CaseKit, name: ItemName): VerdictWords {
  const { verdict } = kit;
  switch (verdict.kind) {
    case 'ready':
      return {
        tone: 'good',
        word: 'Ready',
        sentence: `Everything the plan needs is in store and fits. ${whatToTake(kit)}`,
      };
    case 'readyAt':
      return {
        tone: verdict.late ? 'stop' : 'attention',
        word: `${verdict.late ? 'Too late: ready' : 'Ready'} at ${readyWords(verdict.at)}`,
        sentence: `${listWords(verdict.setCodes)} ${verdict.setCodes.length === 1 ? 'is' : 'are'} back in the sterile store then${
          verdict.late ? ', which is later than the case begins' : ''
        }. ${whatToTake(kit)}`,
      };
    case 'short': {
      const mine = kit.shorts.filter(isMustHave);
      const first = mine[0] as Short;
      const more = mine.length > 1 ? ` and ${countWord(mine.length - 1)} more` : '';
      return {
        tone: 'stop',
        word: `Short: ${shortName(first, kit.needs, name)}${more}`,
        sentence: shortSentence(first, kit.needs, name),
      };
    }
    case 'notEstablished':
      return {
        tone: 'unknown',
        word: 'Not established',
        sentence:
          'Nothing is known to be short, but something is not stated: what is not known to fit is never counted as a fit.',
      };
    case 'planStopped':
      if (kit.needs.steps.length === 0) {
        return {
          tone: 'unknown',
          word: 'Nothing is planned yet',
          sentence: 'The plan states no plate and no screw, so there is nothing to fetch.',
        };
      }
      return {
        tone: 'stop',
        word: 'The plan can’t be built as it is stated',
        sentence:
          'What stops it is listed below. The plan has to be changed by the surgeon; no other implant is offered here.',
      };
    default:
      return never(verdict);
  }
}

/** How sure it is that no kit is better. */
export function proofWords(proof: Proof): string {
  if (proof.kind === 'gap') {
    return proof.lowerBoundTrays >= proof.trays
      ? `Proven: no kit takes fewer than ${proof.trays} trays. That it takes the fewest packs beside them is not proven: the time limit ended it.`
      : `The time limit ended it: ${proof.trays} trays are taken, at least ${proof.lowerBoundTrays} are needed (gap ${percentWord(proof.gap, 0)}).`;
  }
  const how =
    proof.by === 'search'
      ? 'Proven: every choice of fewer trays leaves something short.'
      : 'Proven by integer programme, gap 0.';
  return proof.furtherAims === 'proven'
    ? how
    : `${how} Many kits are as small; of those looked at, this one is the best on use-by, mass and distance.`;
}

const TIE_WORDS: Record<NonNullable<Tie['chosenFor']>, string> = {
  statedLength: 'lengths are closer to those stated',
  promises: 'it keeps to what is promised to this case, and touches no promise to another',
  useBy: 'its use-by comes first',
  mass: 'it is lighter',
  distance: 'it is nearer',
};

export const tieWords = (tie: Tie): string =>
  tie.chosenFor === null
    ? 'Equal on every aim.'
    : `The chosen kit is preferred because ${TIE_WORDS[tie.chosenFor]}.`;

export const BUILDABLE_WORDS: Record<CaseKit['buildable'], string> = {
  yes: 'yes',
  onlyWith: 'only with the packs named',
  no: 'no',
  notEstablished: 'not established',
};

/** `97.6 %`, or `null` where it is not established. */
export function coverWords(figure: LengthCoverFigure | null): string | null {
  return figure?.cover == null ? null : percentWord(figure.cover, 1);
}

/** What would bring the cover to the target, and whether the store has it. */
export function topUpSentence(figure: LengthCoverFigure): string | null {
  if (figure.cover === null) return null;
  if (figure.cover >= figure.target) return `At or above the target of ${percentWord(figure.target, 0)}.`;
  if (!figure.topUp) return `No top-up was found that reaches ${percentWord(figure.target, 0)}.`;
  const parts = figure.topUp.map(({ family, lengthUm, quantity, inStoreAs }) => {
    const there = inStoreAs.reduce((sum, pack) => sum + pack.quantity, 0);
    const store =
      there >= quantity
        ? 'in store as packs'
        : there > 0
          ? `${there} in store as packs`
          : 'not in store as packs';
    return `${quantity} × ${family}, ${writeMm(lengthUm)} mm (${store})`;
  });
  return `To reach ${percentWord(figure.target, 0)}: ${listWords(parts)}.`;
}

/** `Open 2 trays, hold 1, fetch 3 packs.` */
export function whatToTake({ sets, packs }: Pick<CaseKit, 'sets' | 'packs'>): string {
  const open = sets.filter((set) => set.role === 'open').length;
  const hold = sets.length - open;
  const fetch = packs.reduce((sum, pack) => sum + pack.quantity, 0);
  const parts = [
    `open ${countWord(open)} ${open === 1 ? 'tray' : 'trays'}`,
    ...(hold > 0 ? [`hold ${countWord(hold)} unopened`] : []),
    ...(fetch > 0 ? [`fetch ${countWord(fetch)} single ${fetch === 1 ? 'pack' : 'packs'}`] : []),
  ];
  const text = listWords(parts);
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}
