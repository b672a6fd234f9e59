import { scanFaults } from '../checker';

/** What was sent of one kind through a network that loses and doubles, and what the hospital has of it. */
export interface SentOnce {
  kind: string;
  acknowledged: ReadonlySet<string>;
  unknown: ReadonlySet<string>;
  stored: readonly string[];
  /** Subjects or entries of the ledger; `null` where the ledger names something else. */
  entered: readonly string[] | null;
  /** Pieces that were received by each, as sent and as they lie on the shelf now; empty where none are. */
  pieces: readonly { id: string; sent: number; there: number }[];
  /** Refusals: what is sent again must be answered as before. */
  refused: readonly string[];
}

/** Where something is not there, there twice, counted twice, or refused when it is sent again. */
export function onceFaults({
  kind,
  acknowledged,
  unknown,
  stored,
  entered,
  pieces,
  refused,
}: SentOnce): string[] {
  const faults = scanFaults({ acknowledged, unknown, stored, entered: entered ?? stored });
  const amiss = pieces.filter((one) => one.sent !== one.there);
  if (amiss.length > 0)
    faults.push(
      `${amiss.length} with other pieces than were sent: ${amiss[0]?.id} has ${amiss[0]?.there} of ${amiss[0]?.sent}`,
    );
  if (refused.length > 0) faults.push(`${refused.length} refused: ${refused[0]}`);
  if (acknowledged.size === 0) faults.push('none was acknowledged');
  return faults.map((fault) => `${kind}: ${fault}`);
}
