import { LinkButton } from './_ui/link-button';
import { Page } from './_ui/page';

export default function Today() {
  return (
    <Page title="Today" lead="A surgeon’s planned construct, turned into a kit that is proven to fit.">
      <div>
        <LinkButton href="/cases" kind="primary">
          Open the cases
        </LinkButton>
      </div>
    </Page>
  );
}
