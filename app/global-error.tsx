'use client';

import { Button } from './_ui/button';
import { ErrorState } from './_ui/error-state';
import { fontVariables } from './_ui/fonts';
import { Page } from './_ui/page';
import './_ui/tokens.css';
import './globals.css';

/**
 * Shown when even the frame round the pages fails, most often because the database cannot be read. Nothing of the page is
 * there to be kept, so trying again asks for all of it.
 */
export default function FrameError({ error }: { error: Error & { digest?: string } }) {
  return (
    <html lang="en-GB" data-theme="auto" className={fontVariables}>
      <body>
        <title>Kitwright could not start this page</title>
        <main>
          <Page title="Kitwright could not start this page" measure="reading">
            <ErrorState
              title="The frame of the page failed"
              action={
                <Button kind="primary" onClick={() => location.reload()}>
                  Try again
                </Button>
              }
            >
              <p>
                The database may be out of reach, or its folder read-only. Nothing was half-saved. Printed
                sheets stay valid as of the time printed on them.
              </p>
              <p>
                Try again in a minute. If it stays so, work from printed sheets and tell whoever looks after
                Kitwright: its log has the fault
                {error.digest ? (
                  <>
                    {' '}
                    under this reference: <code>{error.digest}</code>
                  </>
                ) : (
                  '.'
                )}
              </p>
            </ErrorState>
          </Page>
        </main>
      </body>
    </html>
  );
}
