'use client';

import Link, { useLinkStatus } from 'next/link';
import { usePathname } from 'next/navigation';
import { useCallback, useId, useRef, useState } from 'react';
import type { Role } from '@/lib/people/role';
import { classNames } from './class-names';
import styles from './main-nav.module.css';
import { MAIN_PAGES, type MainPage, MORE_PAGES, pagesFor } from './main-pages';
import { useDismiss } from './use-dismiss';

/**
 * The main navigation: a ruled row with "More" at its end where it fits, a menu button with all the links where it does
 * not. Both are plain disclosures: they close on Escape, on choosing, and on leaving.
 *
 * @param role whose pages are shown; nobody's are none
 */
export function MainNav({ role }: { role: Role | null }) {
  const pathname = usePathname();
  const [open, setOpen] = useState<'menu' | 'more' | null>(null);
  const [openedAt, setOpenedAt] = useState(pathname);
  const listId = useId();
  const moreId = useId();
  const menuButton = useRef<HTMLButtonElement>(null);
  const moreButton = useRef<HTMLButtonElement>(null);
  const nav = useRef<HTMLElement>(null);

  // Arriving somewhere closes the menu.
  if (openedAt !== pathname) {
    setOpenedAt(pathname);
    setOpen(null);
  }

  const close = useCallback(
    (byEscape: boolean) => {
      if (byEscape) (open === 'more' ? moreButton : menuButton).current?.focus();
      setOpen(null);
    },
    [open],
  );
  useDismiss(open !== null, nav, close);

  const more = pagesFor(MORE_PAGES, role);
  const here = more.find(({ href }) => isCurrent(href, pathname));
  const toggle = (which: 'menu' | 'more') => () => setOpen(open === which ? null : which);
  const link = ({ label, href }: MainPage) => (
    <li key={href}>
      <Link
        href={href}
        className={styles.link}
        aria-current={isCurrent(href, pathname) ? 'page' : undefined}
        onClick={() => setOpen(null)}
      >
        {label}
        <Pending />
      </Link>
    </li>
  );
  if (role === null) return null;
  return (
    <nav ref={nav} aria-label="Main" className={styles.nav}>
      <button
        ref={menuButton}
        type="button"
        className={styles.menu}
        aria-expanded={open === 'menu'}
        aria-controls={listId}
        onClick={toggle('menu')}
      >
        <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
          <path d="M1 3.5h14M1 8h14M1 12.5h14" stroke="currentColor" strokeWidth="1.5" />
        </svg>
        Menu
      </button>
      <div id={listId} className={classNames(styles.list, open === 'menu' && styles.open)}>
        <ul className={styles.main}>{pagesFor(MAIN_PAGES, role).map(link)}</ul>
        <button
          ref={moreButton}
          type="button"
          className={classNames(styles.link, styles.moreButton, here && styles.moreHere)}
          aria-expanded={open === 'more'}
          aria-controls={moreId}
          onClick={toggle('more')}
        >
          {here ? here.label : 'More'}
          <svg viewBox="0 0 10 6" width="10" height="6" aria-hidden="true" focusable="false">
            <path d="M1 1l4 4 4-4" fill="none" stroke="currentColor" strokeWidth="1.5" />
          </svg>
        </button>
        <ul id={moreId} className={classNames(styles.more, open === 'more' && styles.moreOpen)}>
          {more.map(link)}
        </ul>
      </div>
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
