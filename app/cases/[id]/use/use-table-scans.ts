'use client';

import { thingOf } from '@/app/_kit/at-hand';
import { useScans } from '@/app/_scan/use-scans';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import type { TableSlot } from '@/db/queries/usage/tableSlots';
import type { UseLot } from '@/lib/usage/act';
import { atHand } from '@/lib/usage/atHand';
import { thingWords } from '@/lib/wording/scans';
import { usageWords } from '@/lib/wording/usage';
import { touchOf } from './touch';
import type { Table, Touched } from './use-table';

/** Several places a scanned piece may have come from: a person says which. */
export interface Several {
  slots: readonly TableSlot[];
  lot: UseLot;
  scanId: string;
}

/** A scan at the table is a touch of what it names; a set leads to its lines. */
export function useTableScans({
  caseId,
  record,
  table,
  listens,
  onTouch,
  onSet,
  onSeveral,
  onSaid,
}: {
  caseId: string;
  record: RecordOfUse;
  table: Table;
  /** Whether anything can be entered now. */
  listens: boolean;
  onTouch: (touched: Touched) => void;
  onSet: (setId: string) => void;
  onSeveral: (several: Several) => void;
  onSaid: (sentence: string) => void;
}): void {
  useScans(
    (scan) => {
      if (scan.verdict !== 'understood' && scan.verdict !== 'already' && !scan.another) return 'passed';
      const thing = thingOf(scan);
      if (!thing || !listens) return 'passed';
      const { slots, packs } = record;
      const at = atHand(thing, { slots, packs, accounts: table.reckoned.accounts });
      switch (at.kind) {
        case 'pack':
          onTouch(touchOf(at.pack, { lot: at.lot, scanId: scan.id }));
          break;
        case 'slot':
          onTouch(touchOf(at.slot, { lot: at.lot, scanId: scan.id }));
          break;
        case 'several':
          onSeveral({ slots: at.slots, lot: at.lot, scanId: scan.id });
          break;
        case 'set':
          onSet(at.setId);
          break;
        case 'recorded':
          onSaid(usageWords.nothingFree(thingWords(scan.meaning), 0));
          break;
        case 'notHere':
          onSaid(usageWords.notHere(thingWords(scan.meaning)));
          break;
      }
      return 'taken';
    },
    { context: { kind: 'use', caseId: caseId as never }, takes: 'everything' },
  );
}
