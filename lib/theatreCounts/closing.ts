import type { Problem } from '../identity/result';
import { theatreCountWords as words } from '../wording/theatre-counts';
import { type CountSubject, reckon } from './reckon';
import { type TheatreState, thingKey } from './state';

/**
 * What keeps a count in theatre from being closed, all of it: a set that is open is counted whole, one that was counted
 * first is not unopened at the end, and more can't be implanted or thrown away than there was.
 */
export function closingProblems(
  subject: CountSubject,
  state: TheatreState,
  codeOf: (setId: string) => string,
): Problem[] {
  const problems: Problem[] = [];
  const reckoned = reckon(subject, state);
  const sets = [...new Set(subject.lines.map(({ setId }) => setId))];
  for (const setId of sets) {
    const own = reckoned.filter((one) => one.setId === setId);
    const left = own.filter(({ counted }) => counted === null).length;
    if (left > 0)
      problems.push({
        path: ['sets', setId],
        code: 'not-counted',
        message: words.linesLeft(codeOf(setId), left),
      });
    if (state.notOpened.has(setId) && wasCounted(subject, setId))
      problems.push({
        path: ['sets', setId],
        code: 'counted-first',
        message: words.countedFirst(codeOf(setId)),
      });
  }
  for (const one of reckoned.filter(({ setId, counted }) => setId === null && counted === null))
    problems.push({ path: ['added', one.key], code: 'not-counted', message: words.addedLeft(one.name) });
  if (reckoned.length === 0 && state.notOpened.size === 0)
    problems.push({ path: [], code: 'nothing-counted', message: words.nothingCounted });
  for (const one of goneTooMany(subject, state))
    problems.push({ path: ['gone', one.key], code: 'more-than-there', message: words.goneTooMany(one.name) });
  return problems;
}

const wasCounted = ({ first, lines }: CountSubject, setId: string): boolean =>
  lines.some(
    (line) =>
      line.setId === setId &&
      first?.counted.has(thingKey({ kind: 'line', setId, lineId: line.lineId } as never)),
  );

/** Things of which more is said to be gone than there ever was. */
function goneTooMany(subject: CountSubject, state: TheatreState): { key: string; name: string }[] {
  const bare = { ...state, implanted: new Map<string, number>(), discarded: new Map<string, number>() };
  return reckon(subject, bare).filter(({ key, expected }) => {
    const gone = (state.implanted.get(key) ?? 0) + (state.discarded.get(key) ?? 0);
    return expected !== null && gone > expected;
  });
}
