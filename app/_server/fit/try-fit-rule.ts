import 'server-only';
import { loadCatalogue } from '@/db/queries/catalogue';
import { loadFitBasis } from '@/db/queries/fitRules';
import type { Reading } from '@/db/reader';
import { effectOf } from '@/lib/fit/change';
import { parseRuleDraft } from '@/lib/fit/draft';
import { createFitEngine } from '@/lib/fit/engine';
import { ok, type Result } from '@/lib/identity/result';
import { wallClock } from '@/lib/theatre/localTime';
import { asSentence, conditionWords } from '@/lib/wording/fit';
import { countSentence, effectSentence, outcomeLabel } from '@/lib/wording/fit-effect';
import { designWords } from '@/lib/wording/fit-things';
import { now } from '../clock';

/** A rule read back: in words, and by what it would change. */
export interface Tried {
  requires: string;
  appliesWhen: string;
  effect: string;
  counts: string[];
  groups: string[];
}

/** Tries a rule that is not even drafted against the whole catalogue. Nothing is kept. */
export async function tryFitRule(db: Reading, raw: unknown): Promise<Result<Tried>> {
  const parsed = parseRuleDraft(raw);
  if (!parsed.ok) return parsed;
  const draft = parsed.value;
  const day = wallClock(now()).date;
  const [basis, catalogue] = await Promise.all([loadFitBasis(db, day), loadCatalogue(db)]);
  const others = basis.rules.filter(({ code }) => code !== draft.code);
  const trial = {
    ...draft,
    id: 'rule_trial' as (typeof others)[number]['id'],
    status: 'inForce' as const,
    draftedBy: null,
    approvedBy: null,
    inForceFrom: day,
    inForceUntil: null,
    withdrawalAskedBy: null,
    withdrawnBy: null,
    version: 1,
  };
  const effect = effectOf(
    createFitEngine(basis),
    createFitEngine({ ...basis, rules: [...others, trial] }),
    catalogue.filter(({ status }) => status === 'current'),
    draft.relation,
  );
  const name = (design: Parameters<typeof designWords>[1]) => designWords(draft.relation, design).label;
  return ok({
    requires: asSentence(conditionWords(draft.relation, draft.requires)),
    appliesWhen: asSentence(conditionWords(draft.relation, draft.appliesWhen)),
    effect: effectSentence({
      ...effect,
      changed: effect.changed.reduce((sum, { pairs }) => sum + pairs, 0),
    }),
    counts: effect.counts.map(countSentence),
    groups: effect.changed
      .slice(0, 12)
      .map(
        ({ row, column, before, after }) =>
          `${name(row)} · ${name(column)}: ${outcomeLabel(before.outcome)} → ${outcomeLabel(after.outcome)}`,
      ),
  });
}
