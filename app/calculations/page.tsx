import type { Metadata } from 'next';
import Link from 'next/link';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { calculations } from '@/lib/calculations/registry';
import styles from './calculations.module.css';

export const metadata: Metadata = { title: 'Calculations' };

/** Every calculation with the question it answers. */
export default async function CalculationsPage() {
  await enter('/calculations');
  const all = Object.values(calculations);
  return (
    <Page
      title="Calculations"
      lead="Every figure in Kitwright comes from one of these. Open one to see how it is worked, vary what goes in, and repeat it from outside."
    >
      <ul className={styles.list}>
        {all.map(({ name, title, question, formula }) => (
          <li key={name} className={styles.entry}>
            <h2 className={styles.title}>
              <Link href={`/calculations/${name}`}>{title}</Link>
            </h2>
            <p className={styles.question}>{question}</p>
            <p className={styles.formula}>{formula[0]}</p>
            <code className={styles.name}>{name}</code>
          </li>
        ))}
      </ul>
      <Section title="From outside" level={2}>
        <div className={styles.outside}>
          <p>
            <a href="/api/v1/calculations">GET /api/v1/calculations</a> lists them with the schema of what
            goes in and comes out; <code>POST /api/v1/calculations/NAME</code> runs one. Without a server:
          </p>
          <pre className={styles.command}>
            <code>npm run --silent calculate -- NAME &lt; input.json</code>
          </pre>
        </div>
      </Section>
    </Page>
  );
}
