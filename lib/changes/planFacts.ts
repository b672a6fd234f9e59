import type { FitEngine } from '../fit/engine';
import type { CaseKit } from '../kits/kit';
import type { Needs } from '../kits/need';
import { assessPlan, type BookedCase } from '../plans/assess';
import type { Construct } from '../plans/plan';
import type { PlanCatalogue } from '../plans/planCatalogue';
import { verdictWords } from '../wording/kit';
import { CHAIN_WORDS, type ItemName, SLOT_WORDS, stepsWords } from '../wording/kit-parts';
import { faultSentence, isMustHave, shortName } from '../wording/kit-shorts';
import { capitalised, listWords } from '../wording/numbers';
import { GROUP_WORDS, placeWords, planFindingSentence } from '../wording/planFindings';
import type { Fact } from './facts';
import type { Standing } from './trial';

/** How something stands, and all that is so about it, for setting before beside after. */
export interface Judged {
  standing: Standing;
  facts: Fact[];
}

/** What the plan's own findings say; notes ask for nothing and are left out. */
export function findingFacts(
  construct: Construct,
  catalogue: PlanCatalogue,
  engine: FitEngine,
  booked: BookedCase | null,
): Fact[] {
  return assessPlan(construct, catalogue, engine, booked)
    .filter(({ group }) => group !== 'note')
    .map((finding) => ({
      about: capitalised(placeWords(finding.at)),
      say: `${GROUP_WORDS[finding.group]}: ${planFindingSentence(finding)}`,
    }));
}

/** A case's kit: what is taken, what is short, and which instruments the chains are made of. */
export function judgedKit(kit: CaseKit, findings: readonly Fact[], name: ItemName): Judged {
  const { tone, word } = verdictWords(kit, name);
  const { needs } = kit;
  const sets = (role: 'open' | 'hold') => {
    const codes = kit.sets.filter((set) => set.role === role).map(({ code }) => code);
    return codes.length === 0 ? 'none' : listWords(codes.sort());
  };
  const facts: Fact[] = [
    { about: 'The kit', say: word },
    { about: 'Sets to open', say: sets('open') },
    { about: 'Sets to hold unopened', say: sets('hold') },
    ...kit.packs.map(({ itemId, quantity }) => ({
      about: 'Single packs',
      say: `${quantity} × ${name(itemId)}`,
    })),
    ...kit.shorts.map((short) => ({
      about: isMustHave(short) ? 'Short' : 'Short, as a back-up',
      say: `${shortName(short, needs, name)}, for ${stepsWords(short.steps, needs)}`,
    })),
    ...kit.faults.map((fault) => ({ about: 'In the plan', say: faultSentence(fault, needs, name) })),
    ...kit.notEstablished.map(({ steps }) => ({
      about: 'Not established',
      say: stepsWords(steps, needs),
    })),
    ...kit.withCaution.map(({ steps }) => ({ about: 'With a caution', say: stepsWords(steps, needs) })),
    ...kit.chains.flatMap(({ chainId, links }): Fact[] => {
      const chain = needs.chains.find(({ id }) => id === chainId);
      if (!chain) return [];
      const about = `${CHAIN_WORDS[chain.kind]}, ${stepsWords(chain.steps, needs)}`;
      return [{ about, say: links.map(({ itemId }) => name(itemId)).join(' · ') }];
    }),
    ...findings,
  ];
  return { standing: { tone, word }, facts };
}

/** A saved start: what would serve each of its chains anywhere in the catalogue, whatever is in store. */
export function judgedStart(needs: Needs, findings: readonly Fact[], name: ItemName): Judged {
  const { faults } = needs;
  const stopped =
    faults.some(({ kind }) => kind === 'noChainInCatalogue' || kind === 'refused') ||
    findings.some(({ say }) => say.startsWith(`${GROUP_WORDS.stop}:`));
  const open = findings.some(({ say }) => say.startsWith(`${GROUP_WORDS.notEstablished}:`));
  const standing: Standing = stopped
    ? { tone: 'stop', word: 'Can’t be planned as it is saved' }
    : open
      ? { tone: 'unknown', word: 'Not established' }
      : { tone: 'good', word: 'Can be planned' };
  const candidates = needs.chains.flatMap(({ kind, steps, slots }): Fact[] =>
    slots.flatMap((slot) =>
      slot.candidates.flatMap(({ itemId, established }): Fact[] =>
        itemId === null
          ? []
          : [
              {
                about: `${CHAIN_WORDS[kind]}, ${stepsWords(steps, needs)}: ${SLOT_WORDS[slot.name]}`,
                say: established ? name(itemId) : `${name(itemId)}, not established`,
              },
            ],
      ),
    ),
  );
  return {
    standing,
    facts: [
      { about: 'As it is saved', say: standing.word },
      ...faults.map((fault) => ({ about: 'In the plan', say: faultSentence(fault, needs, name) })),
      ...findings,
      ...candidates,
    ],
  };
}

/** A construct that a configuration promises, from a whole set of it alone. */
export function judgedPromise(
  built: {
    outcome: 'yes' | 'no' | 'notEstablished';
    steps: number;
    stepsPossible: number;
    blocked: { steps: string[] }[];
  },
  needs: Needs,
  findings: readonly Fact[],
): Judged {
  const standing: Standing = {
    yes: { tone: 'good' as const, word: 'Buildable' },
    no: { tone: 'stop' as const, word: 'Not buildable' },
    notEstablished: { tone: 'unknown' as const, word: 'Not established' },
  }[built.outcome];
  return {
    standing,
    facts: [
      { about: 'From a whole set', say: standing.word },
      { about: 'Steps that can be done', say: `${built.stepsPossible} of ${built.steps}` },
      ...built.blocked.map(({ steps }) => ({ about: 'Stopped', say: stepsWords(steps, needs) })),
      ...findings,
    ],
  };
}
