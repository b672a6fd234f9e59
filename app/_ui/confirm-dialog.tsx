'use client';

import { type ReactNode, useState } from 'react';
import { Button } from './button';
import { Dialog, type DialogTrigger } from './dialog';
import styles from './problem-summary.module.css';

/**
 * Asks before something that is hard to take back. The confirming button names the act ("Withdraw this plate"),
 * never "OK".
 *
 * @param onConfirm may return a promise; the dialog shows it as pending and closes when it settles. Return a sentence
 *                  to keep the dialog open and say why it was refused.
 */
export function ConfirmDialog({
  title,
  children,
  confirm,
  cancel = 'Go back',
  danger = false,
  trigger,
  open,
  onOpen,
  onConfirm,
}: {
  title: ReactNode;
  children: ReactNode;
  confirm: string;
  cancel?: string;
  danger?: boolean;
  trigger?: DialogTrigger;
  open?: boolean;
  onOpen?: (open: boolean) => void;
  onConfirm: () => undefined | string | Promise<undefined | string>;
}) {
  const [ownOpen, setOwnOpen] = useState(false);
  const [pending, setPending] = useState(false);
  const [refusal, setRefusal] = useState<string | null>(null);

  function setOpen(next: boolean) {
    if (pending) return;
    setRefusal(null);
    if (open === undefined) setOwnOpen(next);
    onOpen?.(next);
  }

  async function run(close: () => void) {
    setPending(true);
    setRefusal(null);
    try {
      const answer = await onConfirm();
      if (typeof answer === 'string') setRefusal(answer);
      else close();
    } catch {
      setRefusal(
        'That did not reach the server, so nothing was changed. Check the connection and try again.',
      );
    } finally {
      setPending(false);
    }
  }

  const closeNow = () => {
    if (open === undefined) setOwnOpen(false);
    onOpen?.(false);
  };

  return (
    <Dialog
      title={title}
      trigger={trigger}
      open={open ?? ownOpen}
      onOpen={setOpen}
      role="alertdialog"
      actions={
        <>
          <Button onClick={() => setOpen(false)}>{cancel}</Button>
          <Button kind={danger ? 'danger' : 'primary'} pending={pending} onClick={() => run(closeNow)}>
            {confirm}
          </Button>
        </>
      }
    >
      {children}
      {refusal ? (
        <div role="alert" className={styles.summary}>
          {refusal}
        </div>
      ) : null}
    </Dialog>
  );
}
