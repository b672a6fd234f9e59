import fc from 'fast-check';
import { parseExceptionDraft, parseRuleDraft } from '@/lib/fit/draft';
import { createFitEngine } from '@/lib/fit/engine';
import { DEFAULT_FIT_SETTINGS, type FitRule } from '@/lib/fit/rule';
import { starterRules } from '@/seed/rules';
import { spoiltJson, spoiltText } from './spoilt';
import { requireSentence, target } from './target';

const drafts = starterRules.map(({ code, relation, appliesWhen, requires, severity, sentence, source }) => ({
  code,
  relation,
  appliesWhen,
  requires,
  severity,
  sentence,
  source,
}));

/** As people paste it: the text itself may be no JSON, and then is not looked at further. */
const pasted = spoiltText(fc.constantFrom(...drafts.map((draft) => JSON.stringify(draft))), 3).map(
  (text): unknown => {
    try {
      return JSON.parse(text);
    } catch {
      return text;
    }
  },
);

/** A rule as a person writes it: kept with its rule working, or refused with every fault of it. */
export const rules = target({
  name: 'rules',
  unit: 'texts of rules',
  runs: { long: 50_000, short: 400 },
  arbitrary: fc.oneof(spoiltJson(fc.constantFrom(...drafts), 3), pasted),
  hold(raw) {
    const exception = parseExceptionDraft(raw);
    if (!exception.ok) for (const { message } of exception.problems) requireSentence(message, raw);
    const read = parseRuleDraft(raw);
    if (!read.ok) {
      if (read.problems.length === 0) throw new Error('refused, and nothing says why');
      for (const { message } of read.problems) requireSentence(message, read.problems);
      return 'refused';
    }
    // what was taken is a rule the engine can use: it throws where it names what does not exist
    const [base] = starterRules;
    const rule = { ...base, ...read.value } as FitRule;
    createFitEngine({ rules: [rule], exceptions: [], settings: DEFAULT_FIT_SETTINGS });
    return 'taken';
  },
});
