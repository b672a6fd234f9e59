import type { ReactNode } from 'react';
import { Breadcrumb, type Crumb } from './breadcrumb';
import { classNames } from './class-names';
import styles from './page.module.css';

/**
 * One page: its way back, title, lead, actions, and the content below a closing rule.
 *
 * @param title   the h1
 * @param mark    a code or status set beside the title
 * @param lead    one or two sentences under it
 * @param actions buttons and links at the end of the title row
 * @param bench   bench and theatre screens: every control inside is at least 48 px
 * @param measure `wide` (default) or `reading` for pages that are mostly text or one form
 */
export function Page({
  title,
  mark,
  lead,
  actions,
  breadcrumb,
  bench = false,
  measure = 'wide',
  children,
}: {
  title: ReactNode;
  mark?: ReactNode;
  lead?: ReactNode;
  actions?: ReactNode;
  breadcrumb?: readonly Crumb[];
  bench?: boolean;
  measure?: 'wide' | 'reading';
  children: ReactNode;
}) {
  return (
    <div
      className={classNames(styles.page, measure === 'reading' && styles.reading)}
      data-size={bench ? 'bench' : undefined}
    >
      <header className={styles.head}>
        {breadcrumb && breadcrumb.length > 0 ? <Breadcrumb trail={breadcrumb} /> : null}
        <div className={styles.titleRow}>
          <div className={styles.title}>
            <h1>{title}</h1>
            {mark ? <div className={styles.mark}>{mark}</div> : null}
          </div>
          {actions ? (
            <div className={styles.actions} data-print="no">
              {actions}
            </div>
          ) : null}
        </div>
        {lead ? <div className={styles.lead}>{lead}</div> : null}
      </header>
      <div className={styles.body}>{children}</div>
    </div>
  );
}
