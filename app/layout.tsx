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
import { EmptyState } from './_ui/empty-state';
import { fontVariables } from './_ui/fonts';
import { Page } from './_ui/page';
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
  const people = await listPeople(database());
  const acting = people.length > 0 ? await actingPerson() : null;
  const inWords = (person: (typeof people)[number]) => ({ ...person, role: ROLE_WORDS[person.role] });
  return (
    <html lang="en-GB" data-theme={theme} className={fontVariables}>
      <body>
        <AppShell
          hospital={hospitalName()}
          theme={theme}
          role={acting?.role ?? null}
          person={
            acting && <PersonSwitch people={people.map(inWords)} current={inWords(acting)} action={actAs} />
          }
        >
          {acting ? children : <NobodyYet />}
        </AppShell>
      </body>
    </html>
  );
}

/** A hospital without people: every screen needs to know who acts, so none of them can be shown yet. */
function NobodyYet() {
  return (
    <Page title="Nobody is entered yet" measure="reading">
      <EmptyState title="This database has no people">
        Every screen records who acts. Start with an empty folder to load the demo hospital, or put your own
        people into the database.
      </EmptyState>
    </Page>
  );
}
