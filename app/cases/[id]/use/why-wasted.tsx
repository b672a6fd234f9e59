'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { Button } from '@/app/_ui/button';
import type { RecordOfUse } from '@/db/queries/usage/recordOfUse';
import { NO_REASON, reasonWords } from '@/lib/wording/reasons';
import { ReasonKeys } from './reason-keys';
import type { Table } from './use-table';

/** Why something was wasted, by the hospital's own reasons, and the way to name it or to name another. */
export function WhyWasted({
  record,
  table,
  name,
  entryId,
  onName,
}: {
  record: RecordOfUse;
  table: Table;
  name: string;
  entryId: string;
  onName: ((reasonId: string | null) => void) | null;
}) {
  const [naming, setNaming] = useState(false);
  const chosen = table.reasonOf(entryId);
  const reason = record.reasons.find(({ id }) => id === chosen);
  // a hospital without reasons is not asked for any
  if (!reason && table.wasteReasons.length === 0) return null;
  return (
    <>
      <p className={kitStyles.under}>{`Reason: ${reason ? reasonWords(reason) : NO_REASON}`}</p>
      {onName && table.wasteReasons.length > 0 ? (
        naming ? (
          <ReasonKeys
            legend={`Why was ${name} wasted?`}
            reasons={table.wasteReasons}
            chosen={chosen}
            onName={(reasonId) => {
              onName(reasonId);
              setNaming(false);
            }}
          />
        ) : (
          <Button
            size="small"
            aria-label={`${reason ? 'Another reason' : 'Name the reason'}: ${name}`}
            onClick={() => setNaming(true)}
          >
            {reason ? 'Another reason' : 'Name the reason'}
          </Button>
        )
      ) : null}
    </>
  );
}
