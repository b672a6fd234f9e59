import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { listPeopleOnFile } from '@/db/queries/peopleOnFile';
import { ROLE_WORDS } from '@/lib/people/role';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import { PeopleTable } from './people-table';

export const metadata: Metadata = { title: 'People' };

/** Who works here, by which ways they sign in. */
export default async function PeoplePage() {
  const { db } = await enter('/people');
  const rows = (await listPeopleOnFile(db)).map((person) => ({
    id: person.id,
    name: person.name,
    role: ROLE_WORDS[person.role],
    ways: waysIn(person),
    seen: person.lastSeenAt === null ? null : moment(person.lastSeenAt),
    left: person.leftAt === null ? null : moment(person.leftAt),
  }));
  return (
    <Page
      title="People"
      lead="Who works here, and as what. What somebody may do follows from their role alone."
      actions={
        <>
          <LinkButton href="/people/tokens">Tokens</LinkButton>
          <LinkButton href="/people/workstations">Workstations</LinkButton>
          <LinkButton href="/people/new" kind="primary">
            Add a person
          </LinkButton>
        </>
      }
    >
      <PeopleTable rows={rows} />
    </Page>
  );
}

function waysIn(person: { hasPin: boolean; hasBadge: boolean; mustChangePassword: boolean }): string {
  const password = person.mustChangePassword ? 'password, to be changed' : 'password';
  if (!person.hasBadge) return password;
  return `${password}; badge${person.hasPin ? ' and PIN' : ', no PIN yet'}`;
}

function moment(at: string): string {
  const { date, time } = wallClock(at);
  return `${dayWords(date)}, ${time}`;
}
