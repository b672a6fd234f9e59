'use client';

import { useEffect, useRef, useState } from 'react';
import { useAct } from '@/app/_turns/use-act';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { Dialog } from '@/app/_ui/dialog';
import { LinkButton } from '@/app/_ui/link-button';
import { SelectField } from '@/app/_ui/select-field';
import { TextArea } from '@/app/_ui/text-area';
import { LABEL_STOCKS } from '@/lib/documents/label';
import styles from './pack.module.css';

const SIZES = Object.entries(LABEL_STOCKS).map(([value, { widthMm, heightMm }]) => ({
  value,
  label: `${widthMm} × ${heightMm} mm`,
}));

/** Opens the label for the printer, and asks for a further copy with its reason. */
export function LabelActions({
  pack,
  newest,
  printId,
  mayPrint,
  focus,
}: {
  pack: { id: string; number: string };
  /** 0 where none was ever printed. */
  newest: number;
  printId: string;
  mayPrint: boolean;
  /** Just packed: Enter prints. */
  focus: boolean;
}) {
  const { act, pending } = useAct();
  const [size, setSize] = useState('');
  const [because, setBecause] = useState('');
  const [asked, setAsked] = useState(false);
  const [open, setOpen] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (focus) place.current?.querySelector<HTMLElement>('a')?.focus();
  }, [focus]);
  const address = `/packs/${pack.id}/label${size === '' ? '' : `?stock=${size}`}`;
  const print = async () => {
    setAsked(true);
    if (newest > 0 && because.trim() === '') return;
    const refused = await act(
      `/api/v1/packs/${pack.id}/labels`,
      { id: printId, because },
      `Copy ${newest + 1} of the label of ${pack.number}: the one before is refused from now on.`,
    );
    setRefusal(refused ?? null);
    if (refused) return;
    setOpen(false);
    setBecause('');
    setAsked(false);
  };
  if (!mayPrint && newest === 0) return null;
  return (
    <div ref={place} className={styles.actions}>
      <SelectField
        name="size"
        label="Size"
        blank="the usual size"
        options={SIZES}
        value={size}
        onValue={setSize}
        width="medium"
      />
      <ButtonRow>
        {newest > 0 ? (
          <LinkButton href={address} kind="primary" newTab>
            Print the label
          </LinkButton>
        ) : (
          <Button kind="primary" pending={pending} onClick={print}>
            Print the first label
          </Button>
        )}
        {mayPrint && newest > 0 ? (
          <Dialog
            title={`Another label for ${pack.number}`}
            trigger={{ label: 'Another label' }}
            open={open}
            onOpen={setOpen}
            actions={
              <Button kind="primary" size="bench" pending={pending} onClick={print}>
                {`Make copy ${newest + 1}`}
              </Button>
            }
          >
            <div className={styles.form} data-size="bench">
              <p>{`Copy ${newest} is refused at a scan from then on: destroy it.`}</p>
              <TextArea
                name="because"
                label="Why another label is needed"
                required
                rows={2}
                maxLength={400}
                value={because}
                onValue={setBecause}
                problems={[
                  ...(asked && because.trim() === '' ? ['Say why, in a few words.'] : []),
                  ...(refusal ? [refusal] : []),
                ]}
              />
            </div>
          </Dialog>
        ) : null}
      </ButtonRow>
    </div>
  );
}

/** Opens a pouch again that is in no load yet. */
export function UndoPouch({ pack }: { pack: { id: string; number: string; revision: number } }) {
  const { act, pending } = useAct();
  const [reason, setReason] = useState('');
  const [asked, setAsked] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);
  return (
    <Dialog
      title={`Open ${pack.number} again`}
      trigger={{ label: 'Open it again' }}
      actions={
        <Button
          kind="danger"
          size="bench"
          pending={pending}
          onClick={async () => {
            setAsked(true);
            if (reason.trim() === '') return;
            const body = { baseRevision: pack.revision, reason };
            setRefusal((await act(`/api/v1/packs/${pack.id}/undo`, body, `${pack.number} is open.`)) ?? null);
          }}
        >
          {`Open ${pack.number}`}
        </Button>
      }
    >
      <div className={styles.form} data-size="bench">
        <p>Its label is refused from then on: destroy it.</p>
        <TextArea
          name="undo-reason"
          label="Why it is opened again"
          required
          rows={2}
          maxLength={400}
          value={reason}
          onValue={setReason}
          problems={[
            ...(asked && reason.trim() === '' ? ['Say why, in a few words.'] : []),
            ...(refusal ? [refusal] : []),
          ]}
        />
      </div>
    </Dialog>
  );
}
