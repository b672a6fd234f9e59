import type { Metadata, Viewport } from 'next';
import { cookies } from 'next/headers';
import type { ReactNode } from 'react';
import { listPeople } from '@/db/queries/people';
import { ROLE_WORDS } from '@/lib/people/role';
import { actAs } from './_server/act-as';
import { database } from './_server/database';
import { hospitalName } from './_server/hospital';
import { actingPerson } from './_server/person';
import { AppShell } from './_ui/app-shell';
import { fontVariables } from './_ui/fonts';
import { PersonSwitch } from './_ui/person-switch';
import { parseTheme, themeCookie } from './_ui/theme';
import './_ui/tokens.css';
import './globals.css';

export const metadata: Metadata = {
  title: { default: 'Kitwright', template: '%s · Kitwright' },
  description: 'Inventory and set configurations for theatre sterile services.',
};

export const viewport: Viewport = { width: 'device-width', initialScale: 1, colorScheme: 'light dark' };

export default async function RootLayout({ children }: { children: ReactNode }) {
  const theme = parseTheme((await cookies()).get(themeCookie)?.value);
  const [people, acting] = await Promise.all([listPeople(database()), actingPerson()]);
  const inWords = (person: (typeof people)[number]) => ({ ...person, role: ROLE_WORDS[person.role] });
  return (
    <html lang="en-GB" data-theme={theme} className={fontVariables}>
      <body>
        <AppShell
          hospital={hospitalName()}
          theme={theme}
          person={<PersonSwitch people={people.map(inWords)} current={inWords(acting)} action={actAs} />}
        >
          {children}
        </AppShell>
      </body>
    </html>
  );
}
