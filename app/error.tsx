'use client';

import { Button } from './_ui/button';
import { ErrorState } from './_ui/error-state';
import { LinkButton } from './_ui/link-button';
import { Page } from './_ui/page';

/** Shown when a page fails for a reason nobody planned for. What was saved before stays saved: writes are all or nothing. */
export default function PageError({
  error,
  retry,
}: {
  error: Error & { digest?: string };
  /** Asks the server for the page anew; what could not be drawn there cannot be drawn from what came. */
  retry: () => void;
}) {
  return (
    <Page title="This page could not be shown" measure="reading">
      <ErrorState
        title="Something went wrong in the program"
        action={
          <>
            <Button kind="primary" onClick={retry}>
              Try again
            </Button>
            <LinkButton href="/">Go to Today</LinkButton>
          </>
        }
      >
        <p>
          Nothing was half-saved: a change is kept whole or not at all. If you were entering something, check
          whether it arrived before entering it again.
        </p>
        {error.digest ? (
          <p>
            If it happens again, tell whoever looks after Kitwright this reference:{' '}
            <code>{error.digest}</code>
          </p>
        ) : null}
      </ErrorState>
    </Page>
  );
}
