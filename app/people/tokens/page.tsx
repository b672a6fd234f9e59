import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { listTokens, type TokenOnFile } from '@/db/queries/api/tokens';
import { listColleagues } from '@/db/queries/people';
import { ROLE_WORDS } from '@/lib/people/role';
import { EVERY_TOKEN, scopeOf, TOKEN_ACTS, type TokenState, tokenState } from '@/lib/people/tokens';
import { momentWords } from '@/lib/wording/sets';
import { actName, TOKEN_STATE_WORDS } from '@/lib/wording/tokens';
import { IssueToken } from './issue-token';
import { TokenList } from './token-list';

export const metadata: Metadata = { title: 'Tokens' };
export const dynamic = 'force-dynamic';

/** By which other systems use the API: whom each acts for, what it may do, and when it was last used. */
export default async function TokensPage() {
  const { db } = await enter('/people/tokens');
  const at = now();
  const [tokens, colleagues] = await Promise.all([listTokens(db), listColleagues(db)]);
  const line = (token: TokenOnFile, state: TokenState) => ({
    id: token.id,
    name: token.name,
    whom: token.person.name,
    acts: token.person.scope.filter((act) => act !== EVERY_TOKEN).map(actName),
    issued: momentWords(token.issuedAt, at),
    expires: momentWords(token.expiresAt, at),
    used: token.lastUsedAt === null ? null : momentWords(token.lastUsedAt, at),
    state,
    word: TOKEN_STATE_WORDS[state],
  });
  const lines = tokens.map((token) => line(token, tokenState(token, at)));
  const open = lines.filter(({ state }) => state === 'open');
  const over = lines.filter(({ state }) => state !== 'open');
  return (
    <Page
      title="Tokens"
      measure="reading"
      lead="By a token another system uses the API as somebody who works here, within some of what their role may do. What needs a person — approving, releasing, counting, proving who one is — no token does."
      breadcrumb={[{ label: 'People', href: '/people' }]}
    >
      <Section title="Issue a token">
        <IssueToken
          people={colleagues.map((one) => ({
            value: one.id,
            label: `${one.name}, ${ROLE_WORDS[one.role].toLowerCase()}`,
            acts: scopeOf(one, TOKEN_ACTS)
              .filter((act) => act !== EVERY_TOKEN)
              .map((act) => ({ value: act, label: actName(act) })),
          }))}
        />
      </Section>
      <Section title="Open" note={String(open.length)}>
        {open.length === 0 ? (
          <EmptyState title="No open token">No other system can use the API of this hospital.</EmptyState>
        ) : (
          <TokenList tokens={open} label="Open tokens" />
        )}
      </Section>
      {over.length > 0 ? (
        <Section title="Over" note={String(over.length)}>
          <TokenList tokens={over} label="Tokens that are over" />
        </Section>
      ) : null}
    </Page>
  );
}
