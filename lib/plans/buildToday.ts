import type { Item } from '../catalogue/item';
import { indexCatalogue } from '../kits/catalogueIndex';
import type { CaseKit } from '../kits/kit';
import { kitSummary } from '../kits/summary';
import { buildTodayWords as words } from '../wording/buildToday';
import type { VerdictWords } from '../wording/kit';

/** What the hospital's sets can build of a saved start today: a word, and why. Plain JSON. */
export interface BuildToday {
  tone: VerdictWords['tone'];
  word: string;
  /** What is short, what it waits for, or what it can only be built with; empty where it is simply there. */
  reasons: string[];
  /** Codes of the sets that would be opened. */
  sets: string[];
}

/** A kit that was planned for no case, as an answer to "could it be built today". */
export function buildToday(kit: CaseKit, catalogue: readonly Item[]): BuildToday {
  const summary = kitSummary(kit, catalogue);
  const sets = summary.open;
  if (kit.verdict.kind === 'ready' && kit.buildable === 'onlyWith') {
    const { byId } = indexCatalogue(catalogue);
    const packs = new Map<string, number>();
    for (const { itemId, quantity, role } of kit.packs)
      if (role === 'open') packs.set(itemId, (packs.get(itemId) ?? 0) + quantity);
    const reasons = [...packs].map(([id, quantity]) =>
      words.pack(quantity, byId.get(id as Item['id'])?.name ?? id),
    );
    return { tone: 'attention', word: words.onlyWith(reasons.length), reasons, sets };
  }
  if (kit.verdict.kind === 'ready') return { tone: 'good', word: summary.word, reasons: [], sets };
  const shorts = summary.shorts.map(({ name, sentence }) => words.short(name, sentence));
  const reasons = kit.verdict.kind === 'short' ? shorts : [summary.sentence];
  return { tone: summary.tone, word: summary.word, reasons, sets };
}
