'use client';

import { Button } from './button';
import { ErrorState } from './error-state';

/** A list that is served could not be asked for: what is shown is from before. */
export function NotAnswered() {
  return (
    <ErrorState
      title="The search could not be answered"
      action={<Button onClick={() => window.location.reload()}>Try again</Button>}
    >
      The list below is from before. Check the connection to the server.
    </ErrorState>
  );
}
