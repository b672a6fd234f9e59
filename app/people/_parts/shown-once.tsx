import { LinkButton } from '@/app/_ui/link-button';
import styles from '../people.module.css';

/** A secret that was made just now and can be seen here alone: it is kept as a hash. */
export function ShownOnce({
  title,
  what,
  secret,
  after,
  next,
}: {
  title: string;
  what: string;
  secret: string;
  after: string;
  next?: { href: string; label: string };
}) {
  return (
    <div role="status" className={styles.once}>
      <h2>{title}</h2>
      <p>{what}, shown this once:</p>
      <p className={styles.secret}>{secret}</p>
      <p>{after}</p>
      {next ? <LinkButton href={next.href}>{next.label}</LinkButton> : null}
    </div>
  );
}
