'use client';

import Link from 'next/link';
import { usePathname } from 'next/navigation';
import { useCallback, useEffect, useId, useRef, useState } from 'react';
import { useActing, useActingPlace } from './acting';
import { Button } from './button';
import styles from './person-menu.module.css';
import { NOT_REACHED } from './send-secret';
import { showToast } from './toast';
import { useDismiss } from './use-dismiss';

/** Who is signed in, and what they may do about it. */
export function PersonMenu({ links }: { links: readonly { href: string; label: string }[] }) {
  const acting = useActing();
  const { workstation } = useActingPlace();
  const pathname = usePathname();
  const [open, setOpen] = useState(false);
  const panelId = useId();
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const close = useCallback((byEscape: boolean) => {
    setOpen(false);
    if (byEscape) button.current?.focus();
  }, []);
  useDismiss(open, box, close);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another page closes the menu
  useEffect(() => setOpen(false), [pathname]);

  async function signOut() {
    try {
      await fetch('/api/v1/people/sign-out', { method: 'POST' });
      // a whole new page: nothing of the person stays in this browser's memory
      location.assign('/sign-in');
    } catch {
      showToast({ tone: 'stop', word: 'Still signed in', text: NOT_REACHED });
    }
  }

  if (!acting) return null;
  return (
    <div ref={box} className={styles.menu}>
      <button
        ref={button}
        type="button"
        className={styles.trigger}
        aria-expanded={open}
        aria-controls={panelId}
        onClick={() => setOpen(!open)}
      >
        <span className={styles.label}>Signed in{workstation ? ` at ${workstation}` : ''}</span>
        <span className={styles.name}>{acting.person.name}</span>
        <span className={styles.role}>{acting.person.role}</span>
      </button>
      <div id={panelId} hidden={!open} className={styles.panel}>
        <ul className={styles.links}>
          {links.map(({ href, label }) => (
            <li key={href}>
              <Link href={href} className={styles.link}>
                {label}
              </Link>
            </li>
          ))}
        </ul>
        {workstation ? (
          <p className={styles.note}>To change the person here, scan your badge and give its PIN.</p>
        ) : null}
        <div className={styles.out}>
          <Button onClick={signOut}>Sign out</Button>
        </div>
      </div>
    </div>
  );
}
