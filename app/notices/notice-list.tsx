import Link from 'next/link';
import type { NoticeOnFile } from '@/db/queries/turns/notices';
import { noticeSentence } from '@/lib/wording/notices';
import { momentWords } from '@/lib/wording/sets';
import styles from './notices.module.css';

/** Notices as plain lines, the newest first. */
export function NoticeList({
  notices,
  now,
  label,
}: {
  notices: readonly NoticeOnFile[];
  now: string;
  label: string;
}) {
  return (
    <ul className={styles.list} aria-label={label}>
      {notices.map(({ id, content, href, toldAt, seenAt }) => (
        <li key={id} data-new={seenAt === null || undefined}>
          <p className={styles.when}>{momentWords(toldAt, now)}</p>
          <p>
            {noticeSentence(content)} {href === null ? null : <Link href={href}>See it</Link>}
          </p>
        </li>
      ))}
    </ul>
  );
}
