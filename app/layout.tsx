import type { Metadata, Viewport } from 'next';
import { cookies } from 'next/headers';
import type { ReactNode } from 'react';
import { AppShell } from './_ui/app-shell';
import { fontVariables } from './_ui/fonts';
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
  return (
    <html lang="en-GB" data-theme={theme} className={fontVariables}>
      <body>
        <AppShell hospital={process.env.KITWRIGHT_HOSPITAL ?? 'Larkmoor Infirmary'} theme={theme}>
          {children}
        </AppShell>
      </body>
    </html>
  );
}
