import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Section } from '@/app/_ui/section';
import { listChanges } from '@/db/queries/theatre/listChanges';
import { noticesFor } from '@/db/queries/turns/notices';
import { hasOwnList } from '@/lib/theatre/listChange';
import { listChangeWords } from '@/lib/wording/list-changes';
import { NoticeList } from './notice-list';
import { SeenButton } from './seen-button';

const SHOWN = 5;

/** New notices on today's page, and that the list has changed; nothing where neither is so. */
export async function ToldToYou() {
  const { db, person } = await enter('/');
  const at = now();
  // of the whole list too much changes to be told here
  const own = hasOwnList(person.role);
  const [notices, changed] = await Promise.all([
    noticesFor(db, person.id, 50),
    own ? listChanges(db, person, at).then(({ count }) => count) : 0,
  ]);
  const unseen = notices.filter(({ seenAt }) => seenAt === null);
  if (unseen.length + changed === 0) return null;
  const shown = unseen.slice(0, SHOWN);
  return (
    <Section
      title="Told to you"
      note={
        unseen.length > SHOWN
          ? `${SHOWN} of ${unseen.length}`
          : unseen.length > 0
            ? String(unseen.length)
            : null
      }
      actions={
        <>
          {shown.length > 0 ? <SeenButton noticeIds={shown.map(({ id }) => id)} /> : null}
          <Link href="/notices">All of them</Link>
        </>
      }
    >
      {changed > 0 ? (
        <p>
          {listChangeWords.short(changed, own)} <Link href="/notices">See what</Link>
        </p>
      ) : null}
      {shown.length > 0 ? <NoticeList notices={shown} now={at} label="Told to you" /> : null}
    </Section>
  );
}
