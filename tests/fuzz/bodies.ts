import fc from 'fast-check';
import { highsSolver } from '@/app/_server/solver/highs';
import { calculations } from '@/lib/calculations/registry';
import { spoiltJson } from './spoilt';
import { requireSentence, target } from './target';

const NAMES = Object.keys(calculations);

const inputs = fc
  .constantFrom(...NAMES)
  .chain((name) =>
    fc.record({ name: fc.constant(name), raw: spoiltJson(fc.constant(calculations[name]?.example), 3) }),
  );

const NO_FIGURE = /NaN|undefined|Infinity/;

/** A line without what was given: a thing may be called by a word that reads like no figure, and is quoted as it is called. */
const withoutNames = (line: string, raw: unknown): string =>
  oddNames(raw).reduce((text, name) => text.replaceAll(name, '…'), line);

function oddNames(raw: unknown): string[] {
  if (typeof raw === 'string') return NO_FIGURE.test(raw) ? [raw] : [];
  return typeof raw === 'object' && raw !== null ? Object.values(raw).flatMap(oddNames) : [];
}

/** What a calculation is given over the API: answered, left open with what is missing, or refused with every fault. */
export const bodies = target({
  name: 'bodies',
  unit: 'bodies of calculations',
  runs: { long: 50_000, short: 200 },
  arbitrary: inputs,
  async hold({ name, raw }) {
    const calculation = calculations[name];
    if (!calculation) throw new Error(`no calculation ${name}`);
    const read = await calculation.evaluate(raw, { solver: highsSolver });
    if (!read.ok) {
      if (read.problems.length === 0) throw new Error('refused, and nothing says why');
      for (const { message } of read.problems) requireSentence(withoutNames(message, raw), read.problems);
      return 'refused';
    }
    const { outcome, working } = read.value;
    for (const { label, expression, value } of working) {
      const line = `${label}: ${expression} = ${value}`;
      if (NO_FIGURE.test(withoutNames(line, raw))) throw new Error(line);
    }
    if (outcome === 'notEstablished') {
      if (read.value.missing.length === 0)
        throw new Error('not established, and nothing is said to be missing');
      return 'taken';
    }
    const answer = calculation.output.safeParse(read.value.answer);
    if (!answer.success) throw new Error(`no answer of its kind: ${answer.error.message}`);
    return 'taken';
  },
});
