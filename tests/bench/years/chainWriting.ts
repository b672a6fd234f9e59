import { createHash } from 'node:crypto';
import { hashInput, LEDGER_START } from '@/lib/ledger/chain';
import type { Statements } from './statements';

/** Writes the ledger, each entry over the hash of the one before. */
export class ChainWriting {
  private hash = LEDGER_START;
  private seq = 0;

  constructor(private readonly insert: Statements) {}

  get entries(): number {
    return this.seq;
  }

  /** @param step of a turn, or what a set came to */
  enter(step: string, subjectId: string, personId: string, at: string, detail: object): void {
    this.seq += 1;
    const detailText = JSON.stringify(detail);
    const row = {
      seq: this.seq,
      form: 2,
      doneAt: at,
      enteredAt: at,
      personId,
      action: ACTION[step] ?? 'move-set',
      subjectKind: 'set',
      subjectId,
      detailText,
      previousHash: this.hash,
    };
    const input = hashInput(row);
    if (input === null) throw new Error('form 2 has its input');
    this.hash = createHash('sha256').update(input, 'utf8').digest('hex');
    this.insert.ledger.run(
      row.seq,
      2,
      at,
      at,
      personId,
      row.action,
      'set',
      subjectId,
      detailText,
      row.previousHash,
      this.hash,
    );
  }
}

/** The act a step is recorded by. */
const ACTION: Record<string, string> = {
  comingBack: 'receive-set',
  washing: 'begin-wash',
  onBench: 'end-wash',
  packed: 'pack-set',
  inSteriliser: 'start-load',
  awaitingAcceptance: 'end-load',
  inSterileStore: 'accept-load',
  inTheatre: 'send-to-theatre',
};
