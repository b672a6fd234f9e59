import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { type DescribedOperation, describedApi } from '@/app/_server/described-api';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { schemaLines } from '@/lib/api/schemaLines';
import styles from '../api-docs.module.css';
import { Coded } from '../coded';

interface Props {
  params: Promise<{ operation: string }>;
}

function find(id: string): { address: string; method: string; operation: DescribedOperation } | null {
  for (const [address, item] of Object.entries(describedApi().paths))
    for (const [method, operation] of Object.entries(item))
      if (operation.operationId === id) return { address, method: method.toUpperCase(), operation };
  return null;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: find((await params).operation)?.operation.operationId ?? 'No such address' };
}

/** One address: who may, what it takes, what it answers, and how it refuses. */
export default async function OperationPage({ params }: Props) {
  await enter('/api-docs/[operation]');
  const found = find((await params).operation);
  if (!found) notFound();
  const { address, method, operation } = found;
  const [says = '', who = ''] = operation.description.split('\n\n');
  const refused = Object.entries(operation.responses).filter(([, one]) => one.$ref !== undefined);
  const body = operation.requestBody?.content['application/json']?.schema;
  return (
    <Page
      title={
        <code className={styles.title}>
          {method} {address}
        </code>
      }
      lead={<Coded text={says} />}
      breadcrumb={[{ label: 'The API', href: '/api-docs' }]}
    >
      <DefinitionList
        items={[
          { term: 'Who', value: who },
          {
            term: 'By token',
            value: operation.security.some((way) => 'token' in way)
              ? 'Yes, one that was issued for this act.'
              : operation.security.length === 0
                ? 'Open: no token is needed.'
                : 'No: it needs a person who is here.',
          },
          {
            term: 'Refused with',
            value: `${refused.map(([status]) => status).join(', ')}, as a problem (RFC 9457).`,
          },
        ]}
      />
      {operation.parameters ? (
        <Section title="Asked with">
          <ul className={styles.members}>
            {operation.parameters.map((one) => (
              <li key={one.name}>
                <code>{one.name}</code>
                <span>
                  {one.in === 'path' ? 'part of the path' : one.required ? 'needed' : 'may be left out'}
                </span>
                <span>
                  <Coded text={one.description} />
                </span>
              </li>
            ))}
          </ul>
        </Section>
      ) : null}
      {body ? (
        <Section title="Sent, as JSON">
          <Members schema={body} />
        </Section>
      ) : null}
      {Object.entries(operation.responses)
        .filter(([, one]) => one.$ref === undefined)
        .map(([status, one]) => (
          <Section key={status} title={`Answered, ${status}`} note={one.description}>
            {Object.entries(one.content ?? {}).map(([media, { schema }]) => (
              <div key={media}>
                <p>
                  As <code>{media}</code>
                </p>
                <Members schema={schema} />
              </div>
            ))}
          </Section>
        ))}
    </Page>
  );
}

function Members({ schema }: { schema: object }) {
  const lines = schemaLines(schema, describedApi().components.schemas);
  return (
    <ul className={styles.members}>
      {lines.map((line, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines of one document never change their order
        <li key={at}>
          <code>{line.path === '' ? 'all of it' : line.path}</code>
          <span>
            {line.is}
            {line.needed ? '' : '; may be left out'}
          </span>
          <span>
            <Coded text={line.note} />
          </span>
        </li>
      ))}
    </ul>
  );
}
