import fc from 'fast-check';
import { item } from '@/lib/catalogue/item';
import { createFitEngine } from '@/lib/fit/engine';
import { DEFAULT_FIT_SETTINGS } from '@/lib/fit/rule';
import { assessPlan } from '@/lib/plans/assess';
import { checkConstruct } from '@/lib/plans/checkConstruct';
import { planCatalogueOf } from '@/lib/plans/planCatalogue';
import { planFindingSentence } from '@/lib/wording/planFindings';
import { SAVED_STARTS } from '@/seed/cases/savedStarts';
import { catalogueEntries } from '@/seed/catalogue/catalogue';
import { starterExceptions, starterRules } from '@/seed/rules';
import { spoiltJson } from './spoilt';
import { requireSentence, target } from './target';

const catalogue = planCatalogueOf(catalogueEntries().map((entry) => item.parse(entry)));
const engine = createFitEngine({
  rules: starterRules,
  exceptions: starterExceptions,
  settings: DEFAULT_FIT_SETTINGS,
});
const SOUND = SAVED_STARTS.map(({ construct }) => construct);

/** A planned construct as a browser or another system sends it. */
export const plans = target({
  name: 'plans',
  unit: 'constructs',
  runs: { long: 50_000, short: 300 },
  arbitrary: spoiltJson(fc.constantFrom(...SOUND), 3),
  hold(raw) {
    const read = checkConstruct(raw, true);
    if (!read.ok) {
      if (read.problems.length === 0) throw new Error('refused, and nothing says why');
      for (const { message } of read.problems) requireSentence(message, read.problems);
      return 'refused';
    }
    const { limb, region } = read.value;
    const booked = limb === null ? null : { limb, region };
    for (const finding of assessPlan(read.value, catalogue, engine, booked))
      requireSentence(planFindingSentence(finding), finding);
    return 'taken';
  },
});
