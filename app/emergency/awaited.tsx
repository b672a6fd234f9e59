'use client';

import { useLinkStatus } from 'next/link';
import { classNames } from '@/app/_ui/class-names';
import styles from './emergency.module.css';

/** A rule along the tile while the answer to it is on the way. */
export function Awaited() {
  const { pending } = useLinkStatus();
  return <span className={classNames(styles.awaited, pending && styles.underWay)} aria-hidden="true" />;
}
