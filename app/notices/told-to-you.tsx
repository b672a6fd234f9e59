import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { Section } from '@/app/_ui/section';
import { noticesFor } from '@/db/queries/turns/notices';
import { NoticeList } from './notice-list';
import { SeenButton } from './seen-button';

const SHOWN = 5;

/** New notices on today's page; nothing where there are none. */
export async function ToldToYou() {
  const { db, person } = await enter('/');
  const unseen = (await noticesFor(db, person.id, 50)).filter(({ seenAt }) => seenAt === null);
  if (unseen.length === 0) return null;
  const shown = unseen.slice(0, SHOWN);
  return (
    <Section
      title="Told to you"
      note={unseen.length > SHOWN ? `${SHOWN} of ${unseen.length}` : String(unseen.length)}
      actions={
        <>
          <SeenButton noticeIds={shown.map(({ id }) => id)} />
          <Link href="/notices">All of them</Link>
        </>
      }
    >
      <NoticeList notices={shown} now={now()} label="Told to you" />
    </Section>
  );
}
