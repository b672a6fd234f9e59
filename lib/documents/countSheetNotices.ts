import type { ItemId } from '../identity/ids';
import { canBeCounted } from '../sets/count';
import type { HeldLine } from '../sets/holdings';
import type { HeldBecause } from '../sets/setState';
import { CLASS_SHORT_WORDS, countSheetWords as words } from '../wording/paper';
import { HELD_BECAUSE_WORDS, stopAbout, stopWords } from '../wording/sets';
import { questionWords } from '../wording/theatre-counts';
import type { CountSheetOf } from './countSheet';
import type { Notice } from './sheet';

/**
 * What stands above the lines of a count sheet: that its version is a draft, that the set is held and why, what stays open
 * from counts in theatre, and, once it is
 * closed, what it goes without and what that stops.
 */
export function countSheetNotices({
  set,
  items,
  sentShort,
  questions = [],
  printing,
}: CountSheetOf): Notice[] {
  const name = (id: ItemId) => items.get(id)?.name ?? id;
  const found: Notice[] = [];
  if (set.version.status === 'draft') {
    found.push({ kind: 'notice', word: words.draftWord, shape: 'note', lines: [words.draftVersion] });
  }
  if (set.step === 'held') {
    const because =
      set.heldBecause === null ? 'nobody has said why' : HELD_BECAUSE_WORDS[set.heldBecause as HeldBecause];
    found.push({
      kind: 'notice',
      word: words.heldWord,
      shape: 'stop',
      lines: [`because ${because ?? set.heldBecause}.`],
    });
  }
  if (questions.length > 0) {
    found.push({
      kind: 'notice',
      word: words.openQuestionWord,
      shape: 'stop',
      lines: questions.map((one) => words.openQuestion(questionWords(one), one.reference)),
    });
  }
  // an open set is about to be counted: what was found before must not guide the counter
  if (canBeCounted(set.step)) return found;
  const short = set.lines.filter((line) => line.found !== null && line.found < line.expected);
  const foreign = set.foreign.map(({ itemId, quantity }) => words.foreignLine(quantity, name(itemId)));
  if (short.length > 0 || foreign.length > 0) {
    const lines = [...short]
      .sort((a, b) => a.mustHaveClass - b.mustHaveClass)
      .map((line) =>
        words.shortLine(
          name(line.itemId),
          placeOf(line),
          line.found ?? 0,
          line.expected,
          CLASS_SHORT_WORDS[line.mustHaveClass],
        ),
      );
    const whatItStops = [
      ...(sentShort?.stops ?? []).map((stop) =>
        words.stops(stopAbout(stop, printing.at), stopWords(stop, name)),
      ),
      ...(sentShort?.forCase ? [words.forCaseOnly(sentShort.forCase.reference)] : []),
    ];
    found.push({
      kind: 'notice',
      word: words.shortWord,
      shape: 'stop',
      lines: [...lines, ...foreign, ...whatItStops],
    });
  }
  const notCounted = set.lines.filter((line) => line.found === null).length;
  if (notCounted > 0) {
    found.push({
      kind: 'notice',
      word: words.notCountedWord,
      shape: 'unknown',
      lines: [words.notCounted(notCounted)],
    });
  }
  return found;
}

const placeOf = ({ layer, row, slot }: HeldLine) => `layer ${layer}, ${row} · ${slot}`;
