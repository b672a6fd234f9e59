import type { Problem } from '@/lib/identity/result';
import { setTurnaroundWords } from '@/lib/wording/set-turnaround';
import type { SetTurnaroundInput } from './schema';

/** Names given twice or not at all, and times that go backwards; all of them at once. */
export function checkSetTurnaround(input: SetTurnaroundInput): Problem[] {
  const problems: Problem[] = [];
  const say = (path: (string | number)[], code: string, message: string) =>
    problems.push({ path, code, message });
  const namesIn = (list: string, key: string, entries: readonly Record<string, unknown>[]) => {
    const seen = new Set<string>();
    entries.forEach((entry, at) => {
      const name = entry[key] as string;
      if (seen.has(name)) say([list, at, key], 'duplicate', setTurnaroundWords.duplicate(name));
      seen.add(name);
    });
    return seen;
  };
  const cases = namesIn('cases', 'case', input.cases);
  const sets = namesIn('sets', 'set', input.sets);
  const configurations = namesIn('configurations', 'configuration', input.configurations);
  const pouches = namesIn('pouches', 'pouch', input.pouches);
  const known = (names: Set<string>, what: string, name: string, path: (string | number)[]) => {
    if (!names.has(name)) say(path, `no-such-${what}`, setTurnaroundWords.noSuch(what, name));
  };

  input.cases.forEach(({ startAtMs, endAtMs, ways }, at) => {
    if (endAtMs <= startAtMs)
      say(['cases', at, 'endAtMs'], 'ends-before-start', setTurnaroundWords.endsFirst);
    ways.forEach(({ parts, pouches: taken }, way) => {
      parts.forEach((part, place) => {
        const path = ['cases', at, 'ways', way, 'parts', place];
        if (part.sets.length + part.configurations.length === 0)
          say(path, 'names-nothing', setTurnaroundWords.namesNothing);
        part.sets.forEach((set, one) => {
          known(sets, 'set', set, [...path, 'sets', one]);
        });
        part.configurations.forEach((configuration, one) => {
          known(configurations, 'configuration', configuration, [...path, 'configurations', one]);
        });
      });
      taken.forEach((pouch, one) => {
        known(pouches, 'pouch', pouch, ['cases', at, 'ways', way, 'pouches', one]);
      });
    });
  });
  input.configurations.forEach(({ stages }, at) => {
    stages.forEach(({ p50Minutes, p90Minutes }, stage) => {
      if (p90Minutes < p50Minutes)
        say(
          ['configurations', at, 'stages', stage, 'p90Minutes'],
          'quicker-than-half',
          setTurnaroundWords.quicker,
        );
    });
  });
  input.sets.forEach(({ configuration, ready }, at) => {
    known(configurations, 'configuration', configuration, ['sets', at, 'configuration']);
    if (ready && ready.p90AtMs < ready.p50AtMs)
      say(['sets', at, 'ready', 'p90AtMs'], 'quicker-than-half', setTurnaroundWords.quicker);
  });
  const promised = new Set<string>();
  input.promises.forEach((promise, at) => {
    known(cases, 'case', promise.case, ['promises', at, 'case']);
    known(sets, 'set', promise.set, ['promises', at, 'set']);
    const key = JSON.stringify([promise.case, promise.set]);
    if (promised.has(key))
      say(['promises', at], 'duplicate', setTurnaroundWords.promisedTwice(promise.case, promise.set));
    promised.add(key);
  });
  input.repairsFor?.forEach((one, at) => {
    known(cases, 'case', one, ['repairsFor', at]);
  });
  return problems;
}
