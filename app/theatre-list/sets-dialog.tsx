'use client';

import { useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { ComboField } from '@/app/_ui/combo-field';
import { Dialog } from '@/app/_ui/dialog';
import { Status } from '@/app/_ui/status';
import { VisuallyHidden } from '@/app/_ui/visually-hidden';
import type { DayCaseLine } from './day-table';
import styles from './theatre-list.module.css';
import { useSetChoices } from './use-set-choices';

/** Which sets are for this case and for nobody else: promises are made and taken back here. */
export function SetsDialog({ line }: { line: DayCaseLine }) {
  const { act, pending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [chosen, setChosen] = useState<string | null>(null);
  const sets = useSetChoices(open);
  const { id, reference, revision: baseRevision } = line;
  const has = new Set(line.sets.map(({ setId }) => setId));
  function show(next: boolean) {
    setOpen(next);
    forget();
    setChosen(null);
  }
  const free = (setId: string, code: string) =>
    act(`/api/v1/cases/${id}/free`, { baseRevision, setId }, `${code} is free again.`);
  async function promise() {
    const code = sets?.find(({ value }) => value === chosen)?.label ?? '';
    const body = { baseRevision, setId: chosen };
    if ((await act(`/api/v1/cases/${id}/promise`, body, `${code} is for ${reference}.`)) === undefined)
      setChosen(null);
  }
  return (
    <>
      <Button size="small" aria-haspopup="dialog" onClick={() => show(true)}>
        Sets
        <VisuallyHidden>{`for ${reference}`}</VisuallyHidden>
      </Button>
      <Dialog
        title={`Sets for ${reference}`}
        open={open}
        onOpen={show}
        actions={<Button onClick={() => show(false)}>Done</Button>}
      >
        <div className={styles.form}>
          {line.sets.length === 0 ? (
            <p>No set is promised to it.</p>
          ) : (
            <ul className={styles.promised}>
              {line.sets.map(({ setId, code, word, tone, inUse }) => (
                <li key={setId}>
                  <strong>{code}</strong>
                  <Status tone={tone} look="plain">
                    {word}
                  </Status>
                  <Button
                    size="small"
                    disabled={inUse}
                    pending={pending}
                    onClick={() => free(setId, code)}
                    aria-label={`Free ${code}`}
                  >
                    Free
                  </Button>
                </li>
              ))}
            </ul>
          )}
          <ComboField
            name={`set-${id}`}
            label="Promise a set"
            options={(sets ?? []).filter(({ value }) => !has.has(value))}
            value={chosen}
            onValue={setChosen}
            placeholder="code or kind"
            empty={sets === null ? 'Looking for the sets …' : undefined}
          />
          <div>
            <Button kind="primary" disabled={chosen === null} pending={pending} onClick={promise}>
              Promise it
            </Button>
          </div>
          {refusal ? <p role="alert">{refusal}</p> : null}
        </div>
      </Dialog>
    </>
  );
}
