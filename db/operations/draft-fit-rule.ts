import { desc, eq } from 'drizzle-orm';
import { parseRuleDraft } from '@/lib/fit/draft';
import type { FitRule } from '@/lib/fit/rule';
import type { NewId } from '@/lib/identity/ids';
import { ok, type Result } from '@/lib/identity/result';
import type { Database } from '../client';
import { ruleFromRow } from '../mappers/fitRule';
import type { Person } from '../queries/people';
import { fitRules } from '../schema';
import { problem, record, refuseUnlessMay } from './fit-lifecycle';

interface DraftFitRule {
  db: Pick<Database, 'tx'>;
  now: string;
  newId: NewId;
  person: Person;
  /** What was entered, unread. */
  draft: unknown;
  /** The version it was drafted from; 0 for a new rule. Another newest version is a conflict. */
  basedOn: number;
}

/**
 * Drafts a new rule, or the next version of one. A draft of the same code is replaced, and whoever drafts
 * last is the one who may not approve. Nothing is in force until a second person approves.
 */
export async function draftFitRule(request: DraftFitRule): Promise<Result<FitRule>> {
  const { db, now, newId, person, basedOn } = request;
  const refused = refuseUnlessMay(person, 'draftFitRule', 'draft a rule');
  if (refused) return refused;
  const parsed = parseRuleDraft(request.draft);
  if (!parsed.ok) return parsed;
  const draft = parsed.value;
  return db.tx(async (write) => {
    const versions = await write
      .select()
      .from(fitRules)
      .where(eq(fitRules.code, draft.code))
      .orderBy(desc(fitRules.version));
    const approved = versions.find(({ status }) => status !== 'draft');
    const earlier = versions.find(({ status }) => status === 'draft');
    const newest = approved?.version ?? 0;
    if (newest !== basedOn) {
      return newest > 0 && basedOn === 0
        ? problem(
            'code-taken',
            `there is a rule “${draft.code}” already: choose another code, or draft its next version`,
            ['code'],
          )
        : problem(
            'changed-meanwhile',
            `version ${newest} came into being meanwhile: draft again from that one`,
          );
    }
    if (approved && approved.relation !== draft.relation) {
      return problem(
        'other-relation',
        `the rule is about “${approved.relation}”: a rule about another relation needs a code of its own`,
        ['relation'],
      );
    }
    if (earlier) await write.delete(fitRules).where(eq(fitRules.id, earlier.id));
    const [row] = await write
      .insert(fitRules)
      .values({ ...draft, id: newId('rule'), status: 'draft', draftedBy: person.id, version: newest + 1 })
      .returning();
    if (!row) throw new Error('the draft was not written');
    await record(write, 'fit-rule', {
      now,
      person,
      id: row.id,
      action: 'draft-fit-rule',
      detail: { code: draft.code, version: row.version, replacesDraft: earlier?.id ?? null },
    });
    return ok(ruleFromRow(row));
  });
}
