'use client';

import { Dialog } from '@/app/_ui/dialog';
import { groupBy } from '@/lib/lists/groupBy';
import { penceOf } from '@/lib/restock/value';
import { poundsWords } from '@/lib/wording/restock-screens';
import styles from '../restock.module.css';
import { ActForm } from './act-form';
import type { SeenProposal } from './decide-dialogs';
import type { LineRow } from './line-row';
import type { Changes } from './proposal-table';
import { useRestockAct } from './use-restock-act';

/** What approving makes, maker by maker, before it is done. */
export function ApproveDialog({
  proposal,
  rows,
  changes,
  open,
  onClose,
}: {
  proposal: SeenProposal;
  rows: readonly LineRow[];
  changes: Changes;
  open: boolean;
  onClose: () => void;
}) {
  const { send, pending, problems } = useRestockAct();
  const ordered = rows
    .map((row) => ({ ...row, ordered: changes[row.id]?.pieces ?? row.proposed }))
    .filter((row) => row.ordered > 0);
  const byMaker = [...groupBy(ordered, ({ maker }) => maker)];

  async function approve() {
    const entry = {
      changes: Object.entries(changes).map(([lineId, change]) => ({ lineId, ...change })),
    };
    const done = await send<{ orders: { number: string }[] }>(
      `/api/v1/restock/${proposal.id}/approve`,
      { baseRevision: proposal.revision, entry },
      ({ orders }) => `Ordered: ${orders.map(({ number }) => number).join(', ')}.`,
    );
    if (done) onClose();
  }

  return (
    <Dialog title={`Approve ${proposal.number}`} open={open} onOpen={(next) => !next && onClose()}>
      <p>Approving makes one order for each maker. You send them yourself: nothing leaves the program.</p>
      <ul className={styles.list}>
        {byMaker.map(([maker, lines]) => (
          <li key={maker}>
            {`${maker}: ${lines.length} ${lines.length === 1 ? 'line' : 'lines'}, value ${poundsWords(penceOf(lines))}`}
          </li>
        ))}
      </ul>
      {Object.keys(changes).length > 0 ? (
        <p>{`${Object.keys(changes).length} changed from what was proposed, each with your reason.`}</p>
      ) : null}
      <ActForm confirm="Approve and order" pending={pending} problems={problems} onSend={approve} />
    </Dialog>
  );
}
