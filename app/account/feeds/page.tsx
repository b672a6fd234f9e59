import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { allFeeds, type FeedOnFile, ownFeeds } from '@/db/queries/calendars/feeds';
import { bookingChoices } from '@/db/queries/cases';
import { readSetting } from '@/db/queries/settings';
import { feedKind } from '@/lib/calendar/feed';
import { may } from '@/lib/people/permissions';
import { FEED_KIND_WORDS, calendarWords as words } from '@/lib/wording/calendar';
import { momentWords } from '@/lib/wording/sets';
import { FeedList } from './feed-list';
import { MakeFeed } from './make-feed';

export const metadata: Metadata = { title: 'Calendar addresses' };
export const dynamic = 'force-dynamic';

/** Addresses under which a calendar program reads the theatre list without signing in. */
export default async function FeedsPage() {
  const { db, person } = await enter('/account/feeds');
  const at = now();
  const administrator = may(person, 'managePeople');
  const [own, everybody, choices, { nameSurgeon }] = await Promise.all([
    ownFeeds(db, person.id),
    administrator ? allFeeds(db) : [],
    bookingChoices(db),
    readSetting(db.read, 'calendars'),
  ]);
  const others = everybody.filter(({ owner }) => owner.id !== person.id);
  const lines = (feeds: readonly FeedOnFile[]) =>
    feeds.map(({ id, owner, kind, theatre, name, madeAt, lastReadAt }) => ({
      id,
      title: words.feedName(kind, theatre),
      name,
      owner: owner.id === person.id ? null : owner.name,
      made: momentWords(madeAt, at),
      read: lastReadAt === null ? null : momentWords(lastReadAt, at),
    }));
  return (
    <Page
      measure="reading"
      title="Calendar addresses"
      lead="A calendar program reads the list under an address of your own. Whoever has the address reads it, so give it to nobody, and revoke it when a device is lost."
      breadcrumb={[{ label: 'Your account', href: '/account' }]}
    >
      <Section title="Make an address">
        <p>
          {`A calendar has the reference, theatre, region and side of each case, ${nameSurgeon ? 'and names the surgeon' : 'and names nobody'}.`}
        </p>
        <MakeFeed
          kinds={feedKind.options.map((kind) => ({ value: kind, ...FEED_KIND_WORDS[kind] }))}
          theatres={choices.theatres.map(({ id, name }) => ({ value: id, label: name }))}
        />
      </Section>
      <Section title="Your addresses" note={String(own.length)}>
        {own.length === 0 ? (
          <EmptyState title="None yet">
            An address you make is listed here with when it was last read.
          </EmptyState>
        ) : (
          <FeedList feeds={lines(own)} label="Your calendar addresses" />
        )}
      </Section>
      {others.length > 0 ? (
        <Section title="Everybody else’s" note={String(others.length)}>
          <FeedList feeds={lines(others)} label="Calendar addresses of others" />
        </Section>
      ) : null}
    </Page>
  );
}
