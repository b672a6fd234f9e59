import type { Metadata } from 'next';
import Link from 'next/link';
import { describedApi } from '@/app/_server/described-api';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import styles from './api-docs.module.css';
import { Coded } from './coded';

export const metadata: Metadata = { title: 'The API' };

/** Every address that another system can use, by what it is about. */
export default async function ApiDocsPage() {
  await enter('/api-docs');
  const { tags, paths, info } = describedApi();
  const all = Object.entries(paths).flatMap(([address, item]) =>
    Object.entries(item).map(([method, operation]) => ({ address, method: method.toUpperCase(), operation })),
  );
  return (
    <Page
      title="The API"
      lead={`${info.description} These pages say what the description says, which is OpenAPI 3.1.`}
    >
      <Section title="How to ask">
        <p>
          Send <code>Authorization: Bearer</code> with a token. An administrator issues it under People, for
          somebody who works here and for some of what their role may do; what it does is in the ledger as
          theirs, by that token. What needs a person who is here, no token does.
        </p>
        <p>
          A list comes in pages: send <code>next</code> of one as <code>cursor</code> of the one that follows,
          until it is null. A single thing has its revision as <code>ETag</code>; send it back as{' '}
          <code>If-Match</code> with what you change. An <code>Idempotency-Key</code> makes sure that what is
          sent twice is done once.
        </p>
        <p>
          A small client in TypeScript, with the types of everything below, lies in{' '}
          <code>clients/typescript</code> of the program.
        </p>
        <p>
          <a href="/api/v1/openapi.json">The whole description as JSON</a>
        </p>
      </Section>
      {tags.map(({ name }) => {
        const its = all.filter(({ operation }) => operation.tags.includes(name));
        return (
          <Section key={name} title={<code>{name}</code>} note={String(its.length)}>
            <ul className={styles.list}>
              {its.map(({ address, method, operation }) => (
                <li key={operation.operationId}>
                  {/* there are hundreds: fetched when they are wanted */}
                  <Link
                    href={`/api-docs/${operation.operationId}`}
                    prefetch={false}
                    className={styles.address}
                  >
                    <span className={styles.method}>{method}</span> {address}
                  </Link>
                  <span>
                    <Coded text={operation.summary} />
                  </span>
                </li>
              ))}
            </ul>
          </Section>
        );
      })}
    </Page>
  );
}
