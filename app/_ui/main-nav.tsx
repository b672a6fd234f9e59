'use client';

import Link, { useLinkStatus } from 'next/link';
import { usePathname } from 'next/navigation';
import { useCallback, useId, useRef, useState } from 'react';
import { classNames } from './class-names';
import styles from './main-nav.module.css';
import { mainPages } from './main-pages';
import { useDismiss } from './use-dismiss';

/**
 * The main navigation: a ruled row where it fits, a menu button with the same links where it does not.
 * The menu is a plain disclosure: it closes on Escape, on choosing, and on leaving.
 */
export function MainNav() {
  const pathname = usePathname();
  const [open, setOpen] = useState(false);
  const [openedAt, setOpenedAt] = useState(pathname);
  const listId = useId();
  const button = useRef<HTMLButtonElement>(null);
  const nav = useRef<HTMLElement>(null);

  // Arriving somewhere closes the menu.
  if (openedAt !== pathname) {
    setOpenedAt(pathname);
    setOpen(false);
  }

  const close = useCallback((byEscape: boolean) => {
    setOpen(false);
    if (byEscape) button.current?.focus();
  }, []);
  useDismiss(open, nav, close);

  return (
    <nav ref={nav} aria-label="Main" className={styles.nav}>
      <button
        ref={button}
        type="button"
        className={styles.menu}
        aria-expanded={open}
        aria-controls={listId}
        onClick={() => setOpen(!open)}
      >
        <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
          <path d="M1 3.5h14M1 8h14M1 12.5h14" stroke="currentColor" strokeWidth="1.5" />
        </svg>
        Menu
      </button>
      <ul id={listId} className={classNames(styles.list, open && styles.open)}>
        {mainPages.map((page) => (
          <li key={page.href}>
            <Link
              href={page.href}
              className={styles.link}
              aria-current={isCurrent(page.href, pathname) ? 'page' : undefined}
              onClick={() => setOpen(false)}
            >
              {page.label}
              <Pending />
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** A rule that draws itself under the link while its page is on the way. Takes no room, so nothing moves. */
function Pending() {
  const { pending } = useLinkStatus();
  return <span className={classNames(styles.pending, pending && styles.underWay)} aria-hidden="true" />;
}

function isCurrent(href: string, pathname: string): boolean {
  return href === '/' ? pathname === '/' : pathname === href || pathname.startsWith(`${href}/`);
}
