'use client';

import { useState } from 'react';
import { CheckboxField } from '@/app/_ui/checkbox-field';
import { REMARKS } from '@/lib/calculations/plateRemarks/schema';
import { plateRemarkWords } from '@/lib/wording/plate-remarks';
import styles from './plans.module.css';

/** Which of the advisory remarks are shown with plans, at this hospital. */
export function RemarkSwitches({ off, maySet }: { off: string[]; maySet: boolean }) {
  const [switchedOff, setSwitchedOff] = useState<ReadonlySet<string>>(new Set(off));
  const [problem, setProblem] = useState<string | null>(null);

  async function set(name: string, shown: boolean) {
    const before = switchedOff;
    const next = new Set(before);
    if (shown) next.delete(name);
    else next.add(name);
    setSwitchedOff(next);
    const answer = await fetch('/api/v1/plans/remarks', {
      method: 'PUT',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ off: [...next] }),
    }).catch(() => null);
    if (answer?.ok) setProblem(null);
    else {
      setSwitchedOff(before);
      setProblem('That was not saved. Nothing was changed.');
    }
  }
  return (
    <div className={styles.switches}>
      <p>
        {maySet
          ? 'Remarks are advisory, each with its published source, and bar nothing. What is off here is not shown with any plan.'
          : 'Remarks are advisory and bar nothing. A theatre manager or administrator sets which of them are shown.'}
      </p>
      {REMARKS.map((name) => (
        <CheckboxField
          key={name}
          name={`remark-${name}`}
          label={plateRemarkWords.name[name]}
          checked={!switchedOff.has(name)}
          onChecked={(shown) => void set(name, shown)}
          disabled={!maySet}
        />
      ))}
      <p role="status">{problem}</p>
    </div>
  );
}
