import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { fitRuleVersions } from '@/db/queries/fitRules';
import { may } from '@/lib/people/permissions';
import { ROLE_WORDS } from '@/lib/people/role';
import { ruleTitle } from '@/lib/wording/fit';
import { FitNav } from '../../_parts/fit-nav';
import { RuleForm } from './rule-form';
import { vocabularies } from './vocabulary';

export const metadata: Metadata = { title: 'Draft a fit rule' };

type Search = Record<string, string | string[] | undefined>;

/** Drafts a rule, or the next version of the one named in `from`. */
export default async function NewRulePage({ searchParams }: { searchParams: Promise<Search> }) {
  const { db, person } = await enter('/fit/rules/new');
  const { from } = await searchParams;
  const code = typeof from === 'string' ? from : '';
  const versions = code ? await fitRuleVersions(db, code) : [];
  const start = versions.find(({ status }) => status === 'draft') ?? versions[0] ?? null;
  const basedOn = versions.find(({ status }) => status !== 'draft')?.version ?? 0;
  return (
    <Page
      title={start ? `Next version: ${ruleTitle(code)}` : 'Draft a rule'}
      lead="State what has to hold, and what to say when it does not. Try it against the catalogue before you draft; nothing is in force until a second person approves."
      breadcrumb={[
        { label: 'Fit', href: '/fit' },
        ...(start ? [{ label: code, href: `/fit/rules/${code}` }] : []),
      ]}
    >
      <FitNav here={null} />
      {code && !start ? (
        <EmptyState title={`There is no rule “${code}”`}>
          You can draft it below under that code or another.
        </EmptyState>
      ) : null}
      {may(person, 'draftFitRule') ? null : (
        <p role="note">
          {person.name} ({ROLE_WORDS[person.role]}) may try a rule here but not draft one: a theatre manager,
          a decontamination lead or an administrator may.
        </p>
      )}
      <RuleForm
        vocabularies={vocabularies()}
        basedOn={basedOn}
        start={
          start && {
            code: start.code,
            relation: start.relation,
            severity: start.severity,
            sentence: start.sentence,
            source: start.source,
            appliesWhen: start.appliesWhen,
            requires: start.requires,
          }
        }
      />
    </Page>
  );
}
