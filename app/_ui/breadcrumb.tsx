import Link from 'next/link';
import styles from './breadcrumb.module.css';

export type Crumb = { label: string; href: string };

/** The way back up: the pages above this one, nearest last. The page itself is not repeated. */
export function Breadcrumb({ trail }: { trail: readonly Crumb[] }) {
  return (
    <nav aria-label="Breadcrumb" className={styles.breadcrumb} data-print="no">
      <ol>
        {trail.map((crumb) => (
          <li key={crumb.href}>
            <Link href={crumb.href}>{crumb.label}</Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}
