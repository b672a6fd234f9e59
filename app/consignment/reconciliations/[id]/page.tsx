import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { CloseReconciliation } from '@/app/consignment/_parts/close-reconciliation';
import { ReconciledTable } from '@/app/consignment/_parts/reconciled-table';
import { findReconciliation } from '@/db/queries/consignment/reconciliations';
import { dateWords } from '@/lib/documents/edition';
import { whyWords } from '@/lib/documents/reconciliation';
import { may } from '@/lib/people/permissions';
import { HOW_WORDS, reconciliationPaper as paper } from '@/lib/wording/reconciliation';
import { momentWords } from '@/lib/wording/sets';

export const metadata: Metadata = { title: 'Reconciliation' };
export const dynamic = 'force-dynamic';

/** What an owner says lies here beside what our record said, lot by lot, and what nothing explains. */
export default async function ReconciliationPage({ params }: { params: Promise<{ id: string }> }) {
  const { db, person } = await enter('/consignment/reconciliations/[id]');
  const { id } = await params;
  const at = now();
  const found = await findReconciliation(db, id);
  if (!found) notFound();
  const left = found.lines.filter(({ unexplained }) => unexplained !== 0);
  const silent = left.filter(({ because }) => because === null).length;
  const mayAct = may(person, 'reconcileConsignment') && found.closedAt === null;
  const seen = { id: found.id, number: found.number, revision: found.revision };
  const [tone, word] =
    found.closedAt === null
      ? (['attention', 'Not closed'] as const)
      : left.length === 0
        ? (['good', 'Closed, all explained'] as const)
        : (['neutral', 'Closed by two, not all explained'] as const);
  return (
    <Page
      title={`Reconciliation ${found.number}`}
      mark={<Status tone={tone}>{word}</Status>}
      lead={`With ${found.owner}, by ${HOW_WORDS[found.how]} of ${dateWords(found.listedOn)}. ${found.how === 'list' ? paper.listOnly : paper.countOnly} It is kept as it was on that moment, and corrects no shelf.`}
      breadcrumb={[
        { label: 'Consignment', href: '/consignment' },
        { label: found.owner, href: `/consignment/${found.lenderId}` },
      ]}
      actions={
        <LinkButton href={`/consignment/reconciliations/${id}/paper`} kind="primary" newTab>
          Reconciliation as PDF
        </LinkButton>
      }
    >
      <DefinitionList
        columns={2}
        items={[
          { term: 'Entered', value: `${momentWords(found.enteredAt, at)}, ${found.enteredBy}` },
          { term: 'Lots', value: String(found.lines.length) },
          {
            term: 'Unexplained',
            value:
              left.length === 0
                ? 'none'
                : silent === 0
                  ? `${left.length}, each with a reason`
                  : `${left.length}; of ${silent} no reason is written`,
          },
          ...(found.closedAt === null
            ? []
            : [
                {
                  term: 'Closed',
                  value: paper.closedBy(
                    momentWords(found.closedAt, at),
                    found.closedBy ?? '',
                    found.closedWith,
                  ),
                },
              ]),
        ]}
      />
      <Section title="Lot by lot" note="what nothing explains first">
        <ReconciledTable
          reconciliation={seen}
          rows={found.lines.map((line) => ({ ...line, why: whyWords(line) }))}
          mayExplain={mayAct}
        />
      </Section>
      {mayAct ? (
        <Section title="Close it">
          <CloseReconciliation reconciliation={seen} left={left.length} silent={silent} />
        </Section>
      ) : null}
    </Page>
  );
}
