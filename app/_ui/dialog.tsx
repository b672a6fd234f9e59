'use client';

import { type ReactNode, useState } from 'react';
import { Heading, Modal, ModalOverlay, Dialog as RacDialog } from 'react-aria-components';
import { Button, type ButtonKind, type ButtonSize } from './button';
import styles from './dialog.module.css';

export type DialogTrigger = { label: ReactNode; kind?: ButtonKind; size?: ButtonSize; disabled?: boolean };

/**
 * A modal sheet. Focus goes in, stays in, and returns to where it was; Escape closes it.
 *
 * Either give `trigger` (a button is drawn and the dialog looks after itself) or control it with `open` + `onOpen`.
 *
 * @param children content, or a function of `close`
 * @param actions  buttons at the foot, or a function of `close`
 * @param width    `narrow` (default), `wide`
 */
export function Dialog({
  title,
  trigger,
  open,
  onOpen,
  dismissable = true,
  width = 'narrow',
  role = 'dialog',
  actions,
  children,
}: {
  title: ReactNode;
  trigger?: DialogTrigger;
  open?: boolean;
  onOpen?: (open: boolean) => void;
  dismissable?: boolean;
  width?: 'narrow' | 'wide';
  role?: 'dialog' | 'alertdialog';
  actions?: ReactNode | ((close: () => void) => ReactNode);
  children: ReactNode | ((close: () => void) => ReactNode);
}) {
  const [ownOpen, setOwnOpen] = useState(false);
  const isOpen = open ?? ownOpen;

  function setOpen(next: boolean) {
    if (open === undefined) setOwnOpen(next);
    onOpen?.(next);
  }
  const close = () => setOpen(false);

  return (
    <>
      {trigger ? (
        <Button
          kind={trigger.kind}
          size={trigger.size}
          disabled={trigger.disabled}
          aria-haspopup="dialog"
          onClick={() => setOpen(true)}
        >
          {trigger.label}
        </Button>
      ) : null}
      <ModalOverlay
        className={styles.scrim ?? ''}
        isOpen={isOpen}
        onOpenChange={setOpen}
        isDismissable={dismissable}
      >
        <Modal className={`${styles.modal} ${width === 'wide' ? styles.wide : ''}`}>
          <RacDialog role={role} className={styles.dialog ?? ''}>
            <div className={styles.head}>
              <Heading slot="title" level={2} className={styles.title ?? ''}>
                {title}
              </Heading>
              {dismissable ? (
                <Button kind="quiet" aria-label="Close" onClick={close} className={styles.close}>
                  <svg viewBox="0 0 14 14" width="14" height="14" aria-hidden="true" focusable="false">
                    <path d="m1 1 12 12M13 1 1 13" stroke="currentColor" strokeWidth="1.75" />
                  </svg>
                </Button>
              ) : null}
            </div>
            <div className={styles.body}>{typeof children === 'function' ? children(close) : children}</div>
            {actions ? (
              <div className={styles.actions}>{typeof actions === 'function' ? actions(close) : actions}</div>
            ) : null}
          </RacDialog>
        </Modal>
      </ModalOverlay>
    </>
  );
}
