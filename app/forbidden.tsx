import { ROLE_WORDS } from '@/lib/people/role';
import { presentSession } from './_server/session';
import { EmptyState } from './_ui/empty-state';
import { LinkButton } from './_ui/link-button';
import { Page } from './_ui/page';

/** Shown, with status 403, to somebody whose role does not reach a screen. */
export default async function NotForYourRole() {
  const session = await presentSession();
  const role = session ? ROLE_WORDS[session.person.role].toLowerCase() : null;
  return (
    <Page title="Not for your role" measure="reading">
      <EmptyState
        title={role ? `A ${role} does not work on this page` : 'This page is not open to you'}
        action={<LinkButton href="/">Go to today</LinkButton>}
      >
        Nothing was changed. Whoever looks after people here can say who works on it, or give you another
        role.
      </EmptyState>
    </Page>
  );
}
