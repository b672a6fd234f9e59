import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';

/** Instead of a form that would be refused. */
export function NotPermitted({ title, person }: { title: string; person: string }) {
  return (
    <Page
      title={title}
      measure="reading"
      breadcrumb={[{ label: 'Catalogue', href: '/catalogue' }]}
      lead={`${person} can’t change the catalogue: a theatre manager, a stock keeper or an administrator can.`}
    >
      <p>Ask one of them; to change it here, one of them signs in at the top of the page.</p>
      <LinkButton href="/catalogue">Back to the catalogue</LinkButton>
    </Page>
  );
}
