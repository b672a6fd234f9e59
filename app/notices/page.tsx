import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { listChanges } from '@/db/queries/theatre/listChanges';
import { kindsOff, noticesFor } from '@/db/queries/turns/notices';
import { MAY_BE_OFF, NOTICE_KINDS } from '@/lib/turns/notice';
import { NOTICE_KIND_WORDS, noticeWords } from '@/lib/wording/notices';
import { ChangedOnList } from './list-changes';
import { NoticeChoice } from './notice-choice';
import { NoticeList } from './notice-list';
import { SeenButton } from './seen-button';

export const metadata: Metadata = { title: 'Told to you' };
export const dynamic = 'force-dynamic';

/** As far back as anybody looks; older ones stay on record. */
const SHOWN = 200;

/** What this person was told inside the program. */
export default async function NoticesPage() {
  const { db, person } = await enter('/notices');
  const at = now();
  const [notices, changes, off] = await Promise.all([
    noticesFor(db, person.id, SHOWN),
    listChanges(db, person, at),
    kindsOff(db, person.id),
  ]);
  const kinds = NOTICE_KINDS.map((kind) => ({
    kind,
    words: NOTICE_KIND_WORDS[kind],
    off: off.includes(kind),
  }));
  const unseen = notices.filter(({ seenAt }) => seenAt === null);
  const seen = notices.filter(({ seenAt }) => seenAt !== null);
  return (
    <Page
      bench
      title="Told to you"
      lead="What others did that concerns you: a shortage you found that is fixed, a hold of yours that was lifted, a set promised to your case that can’t go. Below it, what changed on the list."
    >
      {notices.length === 0 ? (
        <EmptyState title="Nothing yet">Nobody has done anything that you should be told of.</EmptyState>
      ) : null}
      {unseen.length > 0 ? (
        <Section
          title="New"
          note={String(unseen.length)}
          actions={<SeenButton noticeIds={unseen.map(({ id }) => id)} />}
        >
          <NoticeList notices={unseen} now={at} label="New notices" />
        </Section>
      ) : null}
      <ChangedOnList changes={changes} now={at} />
      {seen.length > 0 ? (
        <Section title="Seen" note={`the last ${seen.length}`}>
          <NoticeList notices={seen} now={at} label="Notices seen" />
        </Section>
      ) : null}
      <Section title="What you are told of">
        <NoticeChoice
          key={off.join()}
          kinds={kinds.filter(({ kind }) => MAY_BE_OFF[kind])}
          always={noticeWords.alwaysTold(
            kinds.filter(({ kind }) => !MAY_BE_OFF[kind]).map(({ words }) => words),
          )}
        />
      </Section>
    </Page>
  );
}
