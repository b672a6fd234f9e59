import Link from 'next/link';
import type { ReactNode } from 'react';
import { may } from '@/lib/people/permissions';
import type { Role } from '@/lib/people/role';
import { cautions } from '@/lib/wording/cautions';
import styles from './app-shell.module.css';
import { Cautions } from './cautions';
import { MainNav } from './main-nav';
import { Mark } from './mark';
import type { Theme } from './theme';
import { ThemeToggle } from './theme-toggle';
import { ToastRegion } from './toast';

/**
 * The frame round every page, laid out like the title block of a drawing: product, hospital, who is acting, theme; the
 * navigation under it; then a scale; then the page; and the cautions at the foot.
 *
 * The way to an emergency stands in it at every width, outside of any menu: one press from every screen.
 *
 * @param hospital name shown beside the product
 * @param person   slot for `PersonMenu`; nobody signed in, no way into the program
 */
export function AppShell({
  hospital,
  theme,
  role,
  person,
  children,
}: {
  hospital: string;
  theme: Theme;
  /** Of who is here; nobody has no navigation. */
  role: Role | null;
  person?: ReactNode;
  children: ReactNode;
}) {
  return (
    <>
      <a href="#main" className={styles.skip} data-print="no">
        Skip to the page
      </a>
      <header className={styles.header}>
        <div className={styles.block}>
          <Link href="/" className={styles.product} aria-label="Kitwright, today">
            <Mark />
            <span>Kitwright</span>
          </Link>
          <p className={styles.hospital}>{hospital}</p>
          {role !== null && may({ role }, 'readHospital') ? (
            <Link href="/emergency" className={styles.emergency} data-print="no">
              Emergency
            </Link>
          ) : null}
          <div className={styles.person}>{person}</div>
          <div className={styles.theme}>
            <ThemeToggle initial={theme} />
          </div>
          <div className={styles.nav}>
            <MainNav role={role} />
          </div>
        </div>
        <div className={styles.scale} aria-hidden="true" />
      </header>
      <main id="main" tabIndex={-1} className={styles.main}>
        {children}
      </main>
      <footer className={styles.footer}>
        <Cautions lines={cautions} />
      </footer>
      <ToastRegion />
    </>
  );
}
