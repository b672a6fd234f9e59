import Link from 'next/link';
import { Disclosure } from '@/app/_ui/disclosure';
import { Section } from '@/app/_ui/section';
import type { Person } from '@/db/queries/people';
import { DEMO_BADGES, DEMO_PASSWORD, DEMO_PIN } from '@/lib/people/demo';
import { ROLE_WORDS, role } from '@/lib/people/role';
import { BadgeCode } from '../_server/badge-code';
import styles from './sign-in.module.css';

/** How to get into the demo hospital. Shown there alone: its people are invented, and what they know is no secret. */
export function DemoPeople({ people, from, scans }: { people: Person[]; from: string; scans: boolean }) {
  const back = from === '/' ? '' : `&from=${encodeURIComponent(from)}`;
  return (
    <Section title="This is the demo hospital" look="sheet">
      <p className={styles.how}>
        Everybody here is invented. Choose a name; the password of each is{' '}
        <span className={styles.secret}>{DEMO_PASSWORD}</span>, the PIN{' '}
        <span className={styles.secret}>{DEMO_PIN}</span>.
      </p>
      <div className={styles.roles}>
        {role.options.map((one) => (
          <div key={one}>
            <h3 className={styles.role}>{ROLE_WORDS[one]}</h3>
            <ul className={styles.people}>
              {people
                .filter((person) => person.role === one)
                .map((person) => (
                  <li key={person.id}>
                    <Link
                      href={`/sign-in?name=${encodeURIComponent(person.name)}${back}`}
                      className={styles.person}
                      scroll={false}
                    >
                      {person.name}
                    </Link>
                  </li>
                ))}
            </ul>
          </div>
        ))}
      </div>
      {scans ? (
        <Disclosure summary="Badges to scan from this screen">
          <ul className={styles.badges}>
            {people.flatMap((person) => {
              const code = DEMO_BADGES[person.id];
              return code === undefined
                ? []
                : [
                    <li key={person.id} className={styles.badge}>
                      <BadgeCode code={code} className={styles.code} label={`Badge of ${person.name}`} />
                      {person.name}
                    </li>,
                  ];
            })}
          </ul>
        </Disclosure>
      ) : null}
    </Section>
  );
}
