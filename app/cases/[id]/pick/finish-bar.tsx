'use client';

import { useState } from 'react';
import kitStyles from '@/app/_kit/kit.module.css';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { Dialog } from '@/app/_ui/dialog';
import { LinkButton } from '@/app/_ui/link-button';
import { PatientDataHint } from '@/app/_ui/patient-data-hint';
import { TextArea } from '@/app/_ui/text-area';
import type { KitLine } from '@/db/queries/caseLife/kitLines';
import type { KitScreen } from '@/db/queries/caseLife/kitScreen';
import { listWords } from '@/lib/wording/numbers';

/** The end of the picking: all that is on the list, or all but what somebody says why. */
export function FinishBar({
  booked,
  kit,
  left,
  pending,
  mayPick,
}: {
  booked: { id: string; reference: string };
  kit: KitScreen;
  left: readonly KitLine[];
  /** Entries not saved yet. */
  pending: number;
  mayPick: boolean;
}) {
  const { act, pending: sending, refusal, forget } = useAct();
  const [open, setOpen] = useState(false);
  const [note, setNote] = useState('');
  const finish = (why: string | null) =>
    act(
      `/api/v1/cases/${booked.id}/kit/finish`,
      { baseRevision: kit.revision, note: why },
      `${booked.reference}: picked. Another person checks it.`,
    );
  if (kit.stage === 'picked' && !kit.hidden)
    return (
      <p>
        Picked. Another person now scans everything again, without seeing this list.{' '}
        {kit.pickedNote === null ? '' : `It goes without something: “${kit.pickedNote}”`}
      </p>
    );
  if (kit.stage === 'checked' || kit.stage === 'issued' || kit.stage === 'inTheatre' || kit.stage === 'back')
    return <LinkButton href={`/cases/${booked.id}`} size="bench">{`On to ${booked.reference}`}</LinkButton>;
  if (kit.stage !== 'picking' || !mayPick) return null;
  const nothing = kit.lines.every(({ picked }) => picked.length === 0);
  return (
    <div className={kitStyles.acts}>
      {left.length === 0 ? (
        <Button
          kind="primary"
          size="bench"
          pending={sending}
          disabled={pending > 0}
          onClick={() => finish(null)}
        >
          {pending > 0 ? `Finish: ${pending} pending` : 'The kit is picked'}
        </Button>
      ) : nothing ? null : (
        <Dialog
          title="Go on without it?"
          trigger={{ label: 'Finish without what is left…', size: 'bench', disabled: pending > 0 }}
          open={open}
          onOpen={(next) => {
            forget();
            setOpen(next);
          }}
          actions={
            <Button
              kind="primary"
              size="bench"
              pending={sending}
              onClick={async () => {
                if (note.trim() !== '' && (await finish(note)) === undefined) setOpen(false);
              }}
            >
              Finish without it
            </Button>
          }
        >
          <div className={kitStyles.form} data-size="bench">
            <p>{`Still on the list: ${listWords(left.map(({ name }) => name))}.`}</p>
            <TextArea
              name="picked-note"
              label="Why it goes without, and what theatre has to know"
              required
              rows={2}
              maxLength={400}
              value={note}
              onValue={setNote}
            />
            <PatientDataHint text={note} />
            {refusal ? <p role="alert">{refusal}</p> : null}
          </div>
        </Dialog>
      )}
      {refusal && !open ? <p role="alert">{refusal}</p> : null}
    </div>
  );
}
