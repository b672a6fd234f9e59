import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound } from 'next/navigation';
import { inputOf } from '@/app/_server/calculation-input';
import { enter } from '@/app/_server/enter';
import { highsSolver } from '@/app/_server/solver/highs';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import type { Reading } from '@/db/reader';
import { inputSchema } from '@/lib/calculations/description';
import { findCalculation, runCalculation } from '@/lib/calculations/registry';
import type { Schema } from './schema';
import { readSharedInput, type SharedInput } from './shared-input';
import type { LiveAnswer } from './use-live-answer';
import { WhatIf } from './what-if';
import styles from './what-if.module.css';

interface Props {
  params: Promise<{ name: string }>;
  searchParams: Promise<{ input?: string | string[]; of?: string | string[] }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: findCalculation((await params).name)?.title ?? 'No such calculation' };
}

/** One calculation: what it answers, with inputs to vary, the answer, how it is worked and what it rests on. */
export default async function CalculationPage({ params, searchParams }: Props) {
  const { db } = await enter('/calculations/[name]');
  const { name } = await params;
  const calculation = findCalculation(name);
  if (!calculation) notFound();
  const { input, of } = await searchParams;
  const shared = typeof of === 'string' ? await inputOfSubject(db, name, of) : readSharedInput(input);
  const start = shared.kind === 'read' ? shared.input : calculation.example;
  const outcome = await runCalculation(name, start, { solver: highsSolver });
  const first: LiveAnswer = outcome.ok
    ? { kind: 'output', output: outcome.output }
    : { kind: 'problem', problem: outcome.problem };
  const request = await headers();
  const origin = `${request.get('x-forwarded-proto') ?? 'http'}://${request.get('host') ?? 'localhost:3000'}`;
  return (
    <Page
      title={calculation.title}
      mark={<code className={styles.name}>{name}</code>}
      lead={calculation.question}
      breadcrumb={[{ label: 'Calculations', href: '/calculations' }]}
    >
      {shared.kind === 'unreadable' ? (
        <p className={styles.notice}>
          {typeof of === 'string'
            ? 'What the address names has no such figure.'
            : 'The input in the address could not be read: part of it may be lost.'}{' '}
          The example is shown instead.
        </p>
      ) : null}
      <WhatIf
        key={JSON.stringify(start)}
        name={name}
        schema={inputSchema(calculation) as Schema}
        example={calculation.example}
        start={start}
        first={first}
        origin={origin}
      />
      <div className={styles.rests}>
        <Section title="Formula" level={2}>
          <Lines lines={calculation.formula} className={styles.formula} />
        </Section>
        <Section title="Assumes" level={2}>
          <Lines lines={calculation.assumptions} />
        </Section>
        <Section title="Sources" level={2}>
          <Lines
            lines={calculation.sources.map(({ text, fromMemory }) =>
              fromMemory ? `${text} (quoted from memory: confirm before relying on it)` : text,
            )}
          />
        </Section>
      </div>
    </Page>
  );
}

/** The input behind a figure of a set or a case, by its id. */
async function inputOfSubject(db: Reading, name: string, subject: string): Promise<SharedInput> {
  const input = await inputOf(db, name, subject);
  return input === null ? { kind: 'unreadable' } : { kind: 'read', input };
}

function Lines({ lines, className }: { lines: readonly string[]; className?: string | undefined }) {
  return (
    <ul className={className ?? styles.lines}>
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
