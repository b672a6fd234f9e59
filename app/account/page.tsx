import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { presentSession } from '@/app/_server/session';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { listOwnSessions } from '@/db/queries/peopleOnFile';
import { ROLE_WORDS } from '@/lib/people/role';
import { dayWords, wallClock } from '@/lib/theatre/localTime';
import styles from '../people/people.module.css';
import { EndSession } from './end-session';
import { PasswordForm, PinForm } from './secret-forms';

export const metadata: Metadata = { title: 'Your account' };

const METHOD_WORDS: Record<string, string> = {
  password: 'name and password',
  badgeAndPin: 'badge and PIN',
  oneTimeCode: 'the code of the first start',
};

/** One's own secrets and sessions. */
export default async function AccountPage() {
  const { db, person, session } = await enter('/account');
  const [own, present] = await Promise.all([listOwnSessions(db, person.id, now()), presentSession()]);
  return (
    <Page title="Your account" mark={person.name} lead={ROLE_WORDS[person.role]} measure="reading">
      {present?.mustChangePassword ? (
        <p role="status">
          <Status tone="attention">Choose a password</Status> The one you signed in with was given to you.
          Choose your own, and the rest of Kitwright opens.
        </p>
      ) : null}
      <Section title="Password">
        <PasswordForm name={person.name} />
      </Section>
      <Section title="PIN" note="with your badge, at workstations">
        <PinForm />
      </Section>
      <Section title="Calendar addresses">
        <p>
          A calendar program reads the theatre list under an address of your own.{' '}
          <Link href="/account/feeds">Make, see and revoke addresses</Link>
        </p>
      </Section>
      <Section title="Where you are signed in" note={`${own.length}`}>
        <ul className={styles.sessions}>
          {own.map((one) => (
            <li key={one.id} className={styles.session}>
              <span>
                {one.workstation ?? 'A browser that is no workstation'}, by {METHOD_WORDS[one.method]}, since{' '}
                {dayWords(wallClock(one.beganAt).date)}, {wallClock(one.beganAt).time}
              </span>
              {one.id === session.id ? <Status tone="neutral">Here</Status> : <EndSession id={one.id} />}
            </li>
          ))}
        </ul>
      </Section>
    </Page>
  );
}
