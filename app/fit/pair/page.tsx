import type { Metadata } from 'next';
import Link from 'next/link';
import { OUTCOME_TONE } from '@/app/_changes/pairs-view';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { Disclosure } from '@/app/_ui/disclosure';
import { EmptyState } from '@/app/_ui/empty-state';
import { FindingList } from '@/app/_ui/finding';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { keptCatalogue } from '@/db/queries/caseKit';
import { loadFitEngine } from '@/db/queries/fitRules';
import type { Hole } from '@/lib/catalogue/hole';
import type { Item } from '@/lib/catalogue/item';
import type { FitEngine } from '@/lib/fit/engine';
import { questionsOf, sideOf } from '@/lib/fit/pairFrom';
import { PARTNERS, type PairQuestion } from '@/lib/fit/try-pair';
import { RELATION_WORDS } from '@/lib/wording/fit';
import { outcomeLabel } from '@/lib/wording/fit-effect';
import { PARTNER_WORDS } from '@/lib/wording/fit-partners';
import { holeWords } from '@/lib/wording/fit-things';
import { FitNav } from '../_parts/fit-nav';
import { today } from '../_parts/today';
import { findingViews, valuesSeen } from '../_parts/verdict-view';
import styles from '../fit.module.css';
import { PairPicker } from './pair-picker';

export const metadata: Metadata = { title: 'Try a pair' };

type Search = Record<string, string | string[] | undefined>;

/** Any two items, or an item and a hole: every relation that could hold between them, with its answer and why. */
export default async function PairPage({ searchParams }: { searchParams: Promise<Search> }) {
  const { db } = await enter('/fit/pair');
  const search = await searchParams;
  const read = (name: string) => {
    const value = search[name];
    return (Array.isArray(value) ? value[0] : value)?.slice(0, 80) ?? '';
  };
  const [catalogue, engine] = await Promise.all([keptCatalogue(db), loadFitEngine(db, today())]);
  const sides = [sideOf(read('a'), catalogue), sideOf(read('b'), catalogue)] as const;
  const unknown = [read('a'), read('b')].filter((code, index) => code !== '' && sides[index] === null);
  const narrowed = { hole: read('hole'), use: read('use'), position: read('position') };
  const plate = sides.find(
    (side): side is Extract<Item, { kind: 'plate' }> => typeof side === 'object' && side?.kind === 'plate',
  );
  const kinds = new Set(sides.map((side) => (typeof side === 'object' ? side?.kind : null)));
  const asked = questionsOf(engine, sides, narrowed);
  return (
    <Page
      title="Try a pair"
      lead="Choose any two things. Every relation that could hold between them is asked, and each answer says why."
      breadcrumb={[{ label: 'Fit', href: '/fit' }]}
    >
      <FitNav here="pair" />
      <PairPicker
        items={catalogue.map(({ code, name, status }) => ({
          value: code,
          label: `${code} · ${name}`,
          note: status === 'current' ? undefined : status,
        }))}
        partners={PARTNERS.map((partner) => ({ value: partner, label: PARTNER_WORDS[partner] }))}
        holes={(plate?.holes ?? []).map((hole) => ({
          value: hole.id,
          label: `${hole.id} · ${holeWords(hole)}`,
        }))}
        asksUse={kinds.has('screw') && (kinds.has('plate') || kinds.has('depthGauge'))}
        asksPosition={kinds.has('drillSleeve') && !kinds.has('screw')}
      />
      {unknown.length > 0 ? (
        <EmptyState title={`The catalogue has no “${unknown.join('” and no “')}”`}>
          It may have been entered under another code. Choose from the list above.
        </EmptyState>
      ) : asked === null ? (
        <EmptyState title="Nothing asked yet">
          Choose two things above; type any part of a code or a name.
        </EmptyState>
      ) : asked.length === 0 ? (
        <EmptyState title="No relation holds between these two kinds">
          No rule is about a pair of such things, so there is nothing to answer. Choose another second thing.
        </EmptyState>
      ) : (
        <Answers engine={engine} asked={asked} first={read('relation')} />
      )}
      {asked && asked.length > 0 && sides.every((side) => typeof side === 'object') ? (
        <p>
          <LinkButton
            href={`/fit/exceptions/new?a=${encodeURIComponent(read('a'))}&b=${encodeURIComponent(read('b'))}`}
          >
            Draft an exception for this pair
          </LinkButton>
        </p>
      ) : null}
    </Page>
  );
}

function Answers({ engine, asked, first }: { engine: FitEngine; asked: PairQuestion[]; first: string }) {
  const answers = asked.map((one) => ({ ...one, verdict: engine.ask(one.question) }));
  const ordered = [...answers].sort(
    (a, b) => Number(b.question.relation === first) - Number(a.question.relation === first),
  );
  return (
    <div className={styles.stack}>
      {ordered.map(({ question, holes, end, verdict }) => {
        const shown = verdict.findings.filter(({ answer }) => answer !== 'met');
        const met = verdict.findings.filter(({ answer }) => answer === 'met');
        return (
          <Section
            key={`${question.relation} ${holes[0]?.id ?? ''} ${end ?? ''} ${question.relation === 'joins' ? question.shank.id : ''}`}
            look="sheet"
            title={`${RELATION_WORDS[question.relation].name}${about(holes, end)}`}
            note={RELATION_WORDS[question.relation].asks}
            actions={
              <Status tone={OUTCOME_TONE[verdict.outcome]} look="strong">
                {outcomeLabel(verdict.outcome)}
              </Status>
            }
          >
            {shown.length > 0 ? (
              <FindingList
                label={`Why: ${RELATION_WORDS[question.relation].name}`}
                findings={findingViews({ ...verdict, findings: shown })}
              />
            ) : null}
            {met.length > 0 ? (
              <Disclosure
                summary={`${met.length} ${met.length === 1 ? 'rule' : 'rules'} met`}
                open={shown.length === 0}
              >
                <FindingList label="Rules met" findings={findingViews({ ...verdict, findings: met })} />
              </Disclosure>
            ) : null}
            <Disclosure summary="The values the rules looked at">
              <DefinitionList items={valuesSeen(verdict)} columns={2} />
            </Disclosure>
          </Section>
        );
      })}
      <p className={styles.small}>
        Where a thing is missing from this list, no rule relates the two. <Link href="/fit">All rules</Link>
      </p>
    </div>
  );
}

function about(holes: readonly Hole[], end: number | null): string {
  const [hole] = holes;
  const which = hole
    ? `: ${holes.length > 1 ? 'holes' : 'hole'} ${holes.map(({ id }) => id).join(', ')} (${holeWords(hole)})`
    : '';
  return `${which}${end === null ? '' : `, sleeve end ${end}`}`;
}
