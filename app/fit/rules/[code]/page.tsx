import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { TrialSection } from '@/app/_changes/trial-section';
import { agreeWaits } from '@/app/_changes/waits';
import { Waits } from '@/app/_changes/waits-line';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { Disclosure } from '@/app/_ui/disclosure';
import { FindingList } from '@/app/_ui/finding';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { loadCatalogue } from '@/db/queries/catalogue';
import { contentDigestOf, fitBasisDigest } from '@/db/queries/changes/fitDigests';
import { type TrialSubject, trialsOf } from '@/db/queries/changes/trials';
import { fitRuleVersions, loadFitBasis } from '@/db/queries/fitRules';
import { fitHistory } from '@/db/queries/fitScreens';
import { listPeople } from '@/db/queries/people';
import { pairAddress } from '@/lib/changes/fitEffect';
import { createFitEngine } from '@/lib/fit/engine';
import { examplesOf } from '@/lib/fit/examples';
import type { FitRule } from '@/lib/fit/rule';
import { type Standing, stageOn, standingOn } from '@/lib/fit/standing';
import { may } from '@/lib/people/permissions';
import { conditionWords, factWords, RELATION_WORDS, ruleTitle, sourceWords } from '@/lib/wording/fit';
import { designWords } from '@/lib/wording/fit-things';
import { FitNav } from '../../_parts/fit-nav';
import { HistoryList } from '../../_parts/history-list';
import { LifeActions } from '../../_parts/life-actions';
import { RuleSentence } from '../../_parts/rule-entry';
import { SeverityMark, StandingMark } from '../../_parts/rule-status';
import { today } from '../../_parts/today';
import styles from '../../fit.module.css';

type Params = { params: Promise<{ code: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  return { title: `Fit rule: ${ruleTitle((await params).code)}` };
}

/** One rule: what it requires, where it comes from, what it says of the catalogue, what a change would change. */
export default async function RulePage({ params }: Params) {
  const { db, person } = await enter('/fit/rules/[code]');
  const { code } = await params;
  const day = today();
  const versions = await fitRuleVersions(db, code);
  const [newest] = versions;
  if (!newest) notFound();
  const [basis, catalogue, people, history] = await Promise.all([
    loadFitBasis(db, day),
    loadCatalogue(db),
    listPeople(db),
    fitHistory(
      db,
      'fit-rule',
      versions.map(({ id }) => id),
    ),
  ]);
  const named = (id: string | null) => people.find((one) => one.id === id)?.name ?? null;
  const engine = createFitEngine(basis);
  const current = catalogue.filter(({ status }) => status === 'current');
  const at = (standing: Standing) => versions.find((rule) => standingOn(rule, day) === standing) ?? null;
  const shown = at('draft') ?? at('toCome') ?? at('inForce') ?? newest;
  const stage = stageOn(shown, day);
  const change = stage === 'draft' ? 'putInForce' : 'withdraw';
  const subject: TrialSubject = { kind: 'fit-rule', id: shown.id, change };
  const [trials, basisDigest] = await Promise.all([
    trialsOf(db, subject, contentDigestOf(shown)),
    fitBasisDigest(db.read, day),
  ]);
  const first = stage === 'draft' ? shown.draftedBy : shown.withdrawalAskedBy;
  const mayAgree = may(person, 'approveFitRule');
  const examples = examplesOf(engine, shown, current);
  return (
    <Page
      title={ruleTitle(code)}
      mark={<StandingMark rule={shown} today={day} />}
      lead={<RuleSentence sentence={shown.sentence} words={(fact) => factWords(shown.relation, fact)} />}
      breadcrumb={[{ label: 'Fit', href: '/fit' }]}
      actions={
        <LifeActions
          kind="rule"
          id={shown.id}
          stage={stage}
          today={day}
          waits={agreeWaits({ trials, me: person, mayAgree, first, basisDigest })}
          trialId={trials.find(({ by }) => by.id === person.id)?.id ?? null}
          draftNext={`/fit/rules/new?from=${code}`}
        />
      }
    >
      <FitNav here={null} />
      <div className={styles.split}>
        <Section title="What it says">
          <DefinitionList
            items={[
              {
                term: 'Relation',
                value: `${RELATION_WORDS[shown.relation].name}: ${RELATION_WORDS[shown.relation].between}`,
              },
              { term: 'Requires', value: conditionWords(shown.relation, shown.requires) },
              { term: 'Only where', value: conditionWords(shown.relation, shown.appliesWhen) },
              { term: 'When broken', value: <SeverityMark severity={shown.severity} /> },
              { term: 'Source', value: sourceWords(shown.source) },
              { term: 'Code', value: <code>{shown.code}</code> },
            ]}
          />
          <Disclosure summary="The condition as JSON">
            <pre className={styles.json}>
              {JSON.stringify({ appliesWhen: shown.appliesWhen, requires: shown.requires }, null, 2)}
            </pre>
          </Disclosure>
        </Section>
        <Section title="Who and when">
          <DefinitionList items={life(shown, named)} />
        </Section>
      </div>
      {stage === 'over' ? null : (
        <TrialSection
          title={stage === 'draft' ? 'If this draft were in force' : 'If this rule were withdrawn'}
          subject={subject}
          trials={trials}
          me={person.id}
          drafter={first}
          basisDigest={basisDigest}
          mayTry={may(person, 'draftFitRule')}
        >
          {stage === 'draft' || stage === 'withdrawalAsked' ? (
            <Waits
              sentence={agreeWaits({ trials, me: person, mayAgree, first, basisDigest })}
              by={named(first)}
            />
          ) : null}
        </TrialSection>
      )}
      <Section
        title="In the catalogue now"
        note={`met by ${examples.counts.met.toLocaleString('en-GB')} pairs, broken by ${examples.counts.notMet.toLocaleString('en-GB')}, not established for ${examples.counts.missing.toLocaleString('en-GB')}`}
      >
        <FindingList
          label="Examples from the catalogue"
          empty="The rule says nothing about any pair of current items."
          findings={examples.examples.map(({ answer, row, column, finding }) => ({
            outcome: answer === 'met' ? 'fits' : answer === 'notMet' ? 'doesNotFit' : 'notEstablished',
            severity: shown.severity,
            subject: `${designWords(shown.relation, row).label} · ${designWords(shown.relation, column).label}`,
            sentence: finding.sentence,
            href: pairAddress(shown.relation, row.things[0], column.things[0]),
          }))}
        />
      </Section>
      <Section title="History" note={`${versions.length} ${versions.length === 1 ? 'version' : 'versions'}`}>
        <ul className={styles.rows}>
          {versions.map((rule) => (
            <li key={rule.id}>
              <strong>Version {rule.version}</strong>
              <StandingMark rule={rule} today={day} />
              <span className={styles.grow}>{conditionWords(rule.relation, rule.requires)}</span>
            </li>
          ))}
        </ul>
        <HistoryList entries={history} />
        <p>
          <Link href={`/fit#${shown.relation}`}>
            All rules about {RELATION_WORDS[shown.relation].between}
          </Link>
        </p>
      </Section>
    </Page>
  );
}

function life(rule: FitRule, named: (id: string | null) => string | null) {
  const came = rule.draftedBy === null && rule.status !== 'draft';
  return [
    { term: 'Version', value: String(rule.version) },
    { term: 'Drafted by', value: came ? 'Came with the program' : named(rule.draftedBy) },
    { term: 'Approved by', value: came ? 'Came with the program' : (named(rule.approvedBy) ?? 'Nobody yet') },
    { term: 'In force from', value: rule.inForceFrom ?? 'Not yet' },
    ...(rule.inForceUntil ? [{ term: 'Until', value: rule.inForceUntil }] : []),
    ...(rule.withdrawalAskedBy
      ? [{ term: 'Withdrawal asked by', value: named(rule.withdrawalAskedBy) }]
      : []),
    ...(rule.withdrawnBy ? [{ term: 'Withdrawn by', value: named(rule.withdrawnBy) }] : []),
  ];
}
