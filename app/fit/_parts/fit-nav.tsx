import Link from 'next/link';
import styles from './fit-nav.module.css';

const PAGES = [
  { id: 'rules', label: 'Rules', href: '/fit' },
  { id: 'pair', label: 'Try a pair', href: '/fit/pair' },
  { id: 'table', label: 'Fit table', href: '/fit/table' },
  { id: 'check', label: 'Catalogue check', href: '/fit/check' },
] as const;

/** The four views of fit. */
export function FitNav({ here }: { here: (typeof PAGES)[number]['id'] | null }) {
  return (
    <nav aria-label="Fit" className={styles.nav}>
      <ul>
        {PAGES.map(({ id, label, href }) => (
          <li key={id}>
            <Link href={href} aria-current={id === here ? 'page' : undefined}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
