import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { listPeopleOnFile, waitsOf } from '@/db/queries/peopleOnFile';
import { ROLE_WORDS } from '@/lib/people/role';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { PersonActs } from './person-acts';

type Props = { params: Promise<{ id: string }> };

export const metadata: Metadata = { title: 'Person' };

/** One person: what they are here, how they sign in, and what an administrator can do about it. */
export default async function PersonPage({ params }: Props) {
  const { db, person: me } = await enter('/people/[id]');
  const { id } = await params;
  const person = (await listPeopleOnFile(db)).find((one) => one.id === id);
  if (!person) notFound();
  const waits = await waitsOf(db, person.id, now());
  return (
    <Page
      title={person.name}
      mark={
        person.leftAt === null ? (
          <Status tone="good">Works here</Status>
        ) : (
          <Status tone="neutral">Left, {moment(person.leftAt)}</Status>
        )
      }
      lead={ROLE_WORDS[person.role]}
      breadcrumb={[{ label: 'People', href: '/people' }]}
      measure="reading"
    >
      <Section title="Ways in">
        <DefinitionList
          items={[
            {
              term: 'Password',
              value:
                person.leftAt !== null
                  ? 'none: they left'
                  : person.mustChangePassword
                    ? 'given, to be changed as they sign in'
                    : 'their own',
            },
            { term: 'Badge', value: person.hasBadge ? 'issued' : 'none' },
            { term: 'PIN', value: person.hasPin ? 'chosen' : 'none: they choose it in their account' },
            { term: 'Last seen', value: person.lastSeenAt === null ? 'never' : moment(person.lastSeenAt) },
            {
              term: 'Waits after wrong tries',
              value:
                waits.length === 0
                  ? 'nowhere'
                  : waits
                      .map(({ place, until }) => `${place ?? 'elsewhere'} until ${wallClock(until).time}`)
                      .join('; '),
            },
          ]}
        />
      </Section>
      <PersonActs
        id={person.id}
        name={person.name}
        role={person.role}
        left={person.leftAt !== null}
        hasBadge={person.hasBadge}
        isMe={person.id === me.id}
      />
    </Page>
  );
}

function moment(at: string): string {
  const { date, time } = wallClock(at);
  return `${dayWords(date)}, ${time}`;
}
