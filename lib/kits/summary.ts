import type { Item } from '../catalogue/item';
import { type VerdictWords, verdictWords } from '../wording/kit';
import { stepsWords } from '../wording/kit-parts';
import { isMustHave, shortName, shortSentence } from '../wording/kit-shorts';
import { indexCatalogue } from './catalogueIndex';
import type { CaseKit } from './kit';

/** How a kit stands, in few words: what a list of cases or the planner shows. Plain JSON. */
export interface KitSummary extends VerdictWords {
  /** Codes of the sets to open, and of those to hold. */
  open: string[];
  hold: string[];
  packs: number;
  /** Must-haves that are short: the thing, the steps, the sentence. */
  shorts: { name: string; steps: string; sentence: string }[];
  /** Joint length cover between 0 and 1; `null` when not established or the plan has no screw. */
  lengthCover: number | null;
}

/** The summary of a kit, with items called by their names. */
export function kitSummary(kit: CaseKit, catalogue: readonly Item[]): KitSummary {
  const { byId } = indexCatalogue(catalogue);
  const name = (id: Item['id']) => byId.get(id)?.name ?? id;
  return {
    ...verdictWords(kit, name),
    open: kit.sets.filter((set) => set.role === 'open').map((set) => set.code),
    hold: kit.sets.filter((set) => set.role === 'hold').map((set) => set.code),
    packs: kit.packs.reduce((sum, pack) => sum + pack.quantity, 0),
    shorts: kit.shorts.filter(isMustHave).map((short) => ({
      name: shortName(short, kit.needs, name),
      steps: stepsWords(short.steps, kit.needs),
      sentence: shortSentence(short, kit.needs, name),
    })),
    lengthCover: kit.lengthCover?.cover ?? null,
  };
}
