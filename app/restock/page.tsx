import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { latestProposal, type Proposal } from '@/db/queries/restock/proposal';
import { slotsToRefill } from '@/db/queries/restock/refills';
import { may } from '@/lib/people/permissions';
import { penceOf } from '@/lib/restock/value';
import { PROPOSAL_STATE_TONES, PROPOSAL_STATE_WORDS, poundsWords } from '@/lib/wording/restock-screens';
import { momentWords } from '@/lib/wording/sets';
import { DecideDialogs } from './_parts/decide-dialogs';
import { Decided } from './_parts/decided';
import { lineRow } from './_parts/line-row';
import { ProposalTable } from './_parts/proposal-table';
import { ProposeButton } from './_parts/propose-button';
import { RefillTable } from './_parts/refill-table';

export const metadata: Metadata = { title: 'Restock' };
export const dynamic = 'force-dynamic';

/** Slots that are listed unless all of them are asked for. */
const SLOTS_SHOWN = 200;

export default async function RestockPage({ searchParams }: { searchParams: Promise<{ slots?: string }> }) {
  const { db, person } = await enter('/restock');
  const allSlots = (await searchParams).slots === 'all';
  const at = now();
  const [proposal, refills] = await Promise.all([latestProposal(db), slotsToRefill(db, at)]);
  const mayPropose = may(person, 'proposeRestock');
  return (
    <Page
      title="Restock"
      lead="What to order, and why: each line from what is there, what is promised, and what nobody has booked yet. Nothing is ordered until the theatre manager approves it."
      actions={
        <>
          <LinkButton href="/restock/gaps">Gaps of booked cases</LinkButton>
          <LinkButton href="/restock/orders">Orders</LinkButton>
          <LinkButton href="/restock/backtest">Backtest</LinkButton>
          <LinkButton href="/restock/terms">Terms of supply</LinkButton>
          {mayPropose ? <ProposeButton /> : null}
        </>
      }
    >
      {proposal === null ? (
        <EmptyState title="Nothing has been worked out yet">
          {mayPropose
            ? 'Have it worked out from how things stand now; it takes a second or two.'
            : 'The stock keeper or the theatre manager has it worked out.'}
        </EmptyState>
      ) : (
        <ProposalSection proposal={proposal} at={at} mayDecide={may(person, 'approveRestock')} />
      )}
      <Section
        title="To refill from the shelf"
        note={`${refills.length} ${refills.length === 1 ? 'slot lacks' : 'slots lack'} pieces`}
      >
        <p>
          What slots of sets lack now, and what the shelf has of it, first expired first. It is put in at the
          bench; what the shelf lacks for it is in the proposal above.
        </p>
        <RefillTable rows={allSlots ? refills : refills.slice(0, SLOTS_SHOWN)} />
        {refills.length > SLOTS_SHOWN ? (
          <p>
            {allSlots ? (
              <Link href="/restock">{`The first ${SLOTS_SHOWN} alone`}</Link>
            ) : (
              <>
                {`The first ${SLOTS_SHOWN} are listed, by set. `}
                <Link href="/restock?slots=all">{`All ${refills.length}`}</Link>
              </>
            )}
          </p>
        ) : null}
      </Section>
    </Page>
  );
}

function ProposalSection({
  proposal,
  at,
  mayDecide,
}: {
  proposal: Proposal;
  at: string;
  mayDecide: boolean;
}) {
  const { lines, state, number } = proposal;
  const pieces = (line: (typeof lines)[number]) => line.approved ?? line.proposed;
  const toOrder = lines.filter((line) => pieces(line) > 0);
  const open = lines.filter(({ answer }) => answer === null).length;
  const isOpen = state === 'proposed';
  const rows = lines.map(lineRow);
  return (
    <Section
      title={`Proposal ${number}`}
      note={`worked out by ${proposal.proposedBy}, ${momentWords(proposal.proposedAt, at)}`}
    >
      <p>
        <Status tone={PROPOSAL_STATE_TONES[state]}>{PROPOSAL_STATE_WORDS[state]}</Status>
      </p>
      <Decided proposal={proposal} at={at} />
      <FigureRow>
        <Figure
          size="medium"
          label="Lines to order"
          value={toOrder.length}
          note={`of ${proposal.lookedAt} items looked at`}
        />
        <Figure
          size="medium"
          label="Value"
          value={valueWord(
            penceOf(toOrder.map((line) => ({ ordered: pieces(line), unitPence: line.unitPence }))),
          )}
          note="at the catalogue’s prices"
        />
        <Figure size="medium" label="Enough as they are" value={proposal.enough} />
        <Figure
          size="medium"
          label="How much to keep not established"
          value={open + proposal.withoutUse}
          note={`${proposal.withoutUse} of them without a use on record, and not listed`}
        />
      </FigureRow>
      {isOpen && mayDecide ? (
        <DecideDialogs proposal={{ id: proposal.id, number, revision: proposal.revision }} rows={rows} />
      ) : (
        <ProposalTable rows={rows} onChange={null} changes={{}} />
      )}
      <p>
        How a line is worked out:{' '}
        <Link href="/calculations/reorder">the calculation, its sources and what it takes for granted</Link>.
      </p>
    </Section>
  );
}

const valueWord = (pence: number | null) => (pence === null ? null : poundsWords(pence));
