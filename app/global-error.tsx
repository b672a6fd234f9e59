'use client';

import { Button } from './_ui/button';
import { ErrorState } from './_ui/error-state';
import { Page } from './_ui/page';
import './_ui/tokens.css';
import './globals.css';

/** Shown when even the frame round the pages fails, most often because the database cannot be opened. */
export default function FrameError({
  error,
  reset,
}: {
  error: Error & { digest?: string };
  reset: () => void;
}) {
  return (
    <html lang="en-GB" data-theme="auto">
      <body>
        <main>
          <Page title="Kitwright could not start this page" measure="reading">
            <ErrorState
              title="The frame of the page failed"
              action={
                <Button kind="primary" onClick={reset}>
                  Try again
                </Button>
              }
            >
              <p>
                The database may be out of reach, or its folder read-only. Nothing was half-saved. Printed
                sheets stay valid as of the time printed on them.
              </p>
              {error.digest ? (
                <p>
                  Reference: <code>{error.digest}</code>
                </p>
              ) : null}
            </ErrorState>
          </Page>
        </main>
      </body>
    </html>
  );
}
