import { Fragment } from 'react';
import styles from './loads.module.css';

/** Codes one after the other; a line breaks between two of them, never within one. */
export function PackNames({ names, most = names.length }: { names: readonly string[]; most?: number }) {
  if (names.length === 0) return 'none';
  const more = names.length - most;
  return (
    <>
      {names.slice(0, most).map((name, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two pouches of one item have one code
        <Fragment key={at}>
          {at > 0 ? ', ' : ''}
          <span className={styles.whole}>{name}</span>
        </Fragment>
      ))}
      {more > 0 ? ` and ${more} more` : ''}
    </>
  );
}
