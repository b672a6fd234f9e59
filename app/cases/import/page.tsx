import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { FIELD_HEADINGS, IMPORT_FIELDS } from '@/lib/theatre/import/fields';
import { FIELD_WORDS, listImportWords } from '@/lib/wording/list-import';
import styles from './import.module.css';
import { ListImport } from './list-import';

export const metadata: Metadata = { title: 'Import a theatre list' };
export const dynamic = 'force-dynamic';

export default async function ImportListPage() {
  await enter('/cases/import');
  return (
    <Page
      title="Import a theatre list"
      lead="The file is tried first: you see what would become of each row. Then all of it is imported, or nothing."
      breadcrumb={[{ label: 'Cases', href: '/cases' }]}
      actions={
        <>
          <LinkButton href="/cases/import/sample.csv" download>
            Sample CSV
          </LinkButton>
          <LinkButton href="/cases/import/sample.xlsx" download>
            Sample XLSX
          </LinkButton>
        </>
      }
    >
      <ListImport limits={listImportWords.limits}>
        <dl className={styles.fields}>
          {IMPORT_FIELDS.map((field) => (
            <div key={field}>
              <dt>{FIELD_HEADINGS[field]}</dt>
              <dd>{FIELD_WORDS[field]}</dd>
            </div>
          ))}
        </dl>
      </ListImport>
    </Page>
  );
}
