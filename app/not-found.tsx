import type { Metadata } from 'next';
import { ButtonRow } from './_ui/button-row';
import { LinkButton } from './_ui/link-button';
import { Page } from './_ui/page';

export const metadata: Metadata = { title: 'Nothing at this address' };

export default function NotFound() {
  return (
    <Page
      title="Nothing at this address"
      measure="reading"
      lead="The address is mistyped, or names an item, set or case that is not in this hospital’s records. Records are never deleted here: what was withdrawn is still listed, marked as withdrawn."
    >
      <p>Check the code on the label or sheet, or look for it by name.</p>
      <nav aria-label="Where to look">
        <ButtonRow>
          <LinkButton href="/catalogue" kind="primary">
            Search the catalogue
          </LinkButton>
          <LinkButton href="/sets">All sets</LinkButton>
          <LinkButton href="/cases">All cases</LinkButton>
        </ButtonRow>
      </nav>
    </Page>
  );
}
