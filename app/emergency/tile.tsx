import Link from 'next/link';
import type { ReactNode } from 'react';
import { classNames } from '@/app/_ui/class-names';
import { Awaited } from './awaited';
import styles from './emergency.module.css';

/** One answer to press, as large as a thumb wants it; pressing goes to the address with this answer in it. */
export function Tile({
  href,
  label,
  note,
  chosen = false,
  look = 'plain',
  stay = false,
}: {
  href: string;
  label: ReactNode;
  note?: ReactNode;
  chosen?: boolean;
  look?: 'plain' | 'primary';
  /** The page keeps its place: the answer changes something on it, and asks no other question. */
  stay?: boolean;
}) {
  return (
    <Link
      href={href}
      scroll={!stay}
      prefetch={false}
      aria-current={chosen ? 'true' : undefined}
      className={classNames(
        styles.tile,
        look === 'primary' && styles.tilePrimary,
        chosen && styles.tileChosen,
      )}
    >
      <span>{label}</span>
      {note ? <span className={styles.tileNote}>{note}</span> : null}
      <Awaited />
    </Link>
  );
}
