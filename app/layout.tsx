import type { Metadata, Viewport } from 'next';
import { cookies, headers } from 'next/headers';
import type { ReactNode } from 'react';
import { may } from '@/lib/people/permissions';
import { ROLE_WORDS } from '@/lib/people/role';
import { ScanHost } from './_scan/scan-host';
import { hospitalName } from './_server/hospital';
import { presentWorkstation } from './_server/place';
import { runningServer } from './_server/running-server';
import { type PresentSession, presentSession } from './_server/session';
import { ActingProvider } from './_ui/acting';
import type { Acting } from './_ui/acting-store';
import { AppShell } from './_ui/app-shell';
import { BadgeSwitch } from './_ui/badge-switch';
import { fontVariables } from './_ui/fonts';
import { NewerBuild } from './_ui/newer-build';
import { PersonMenu } from './_ui/person-menu';
import { SessionWatch } from './_ui/session-watch';
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
  // for the styles that a component adds in the browser: it looks for the nonce of the page here
  const policy = (await headers()).get('content-security-policy') ?? '';
  const nonce = /'nonce-([^']+)'/.exec(policy)?.[1];
  const [session, workstation] = await Promise.all([presentSession(), presentWorkstation()]);
  return (
    <html lang="en-GB" data-theme={theme} className={fontVariables}>
      <body>
        {nonce ? <meta property="csp-nonce" nonce={nonce} /> : null}
        <ActingProvider
          sent={session && actingAs(session)}
          workstation={workstation?.name ?? null}
          idleMinutes={session?.idleMinutes ?? 0}
        >
          <AppShell
            hospital={hospitalName()}
            theme={theme}
            role={session?.person.role ?? null}
            person={session && <PersonMenu links={linksFor(session)} />}
          >
            {children}
          </AppShell>
          <ScanHost />
          <BadgeSwitch />
          <SessionWatch />
          <NewerBuild build={runningServer()?.buildId ?? ''} />
        </ActingProvider>
      </body>
    </html>
  );
}

function actingAs({ person, session, ticket }: PresentSession): Acting {
  const { id, name, role } = person;
  return { person: { id, name, role: ROLE_WORDS[role] }, sessionId: session.id, ticket };
}

/** What a person finds under their name. */
function linksFor({ person }: PresentSession) {
  return [
    { href: '/account', label: 'Your account' },
    { href: '/notices', label: 'Told to you' },
    ...(may(person, 'readPeople') ? [{ href: '/people', label: 'People' }] : []),
    ...(may(person, 'enrolWorkstation') ? [{ href: '/people/workstations', label: 'Workstations' }] : []),
  ];
}
