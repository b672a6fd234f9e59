import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { enter } from '@/app/_server/enter';
import { DefinitionList } from '@/app/_ui/definition-list';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { listSettings, type SettingChange, settingHistory } from '@/db/queries/settings';
import { may } from '@/lib/people/permissions';
import { boundsOf, entryOf, valueWords } from '@/lib/settings/entry';
import { fieldsOf, SETTING_GROUPS, SETTING_KEYS } from '@/lib/settings/fields';
import type { SettingKey } from '@/lib/settings/local';
import { momentWords } from '@/lib/wording/changes';
import { settingWords } from '@/lib/wording/settings';
import styles from '../settings.module.css';
import { SettingForm } from './setting-form';

export const dynamic = 'force-dynamic';

type Params = { params: Promise<{ key: string }> };

const keyOf = (given: string) => SETTING_KEYS.find((one) => one === given) ?? null;

export async function generateMetadata({ params }: Params): Promise<Metadata> {
  const key = keyOf((await params).key);
  return { title: key ? `Setting: ${SETTING_GROUPS[key].title}` : 'No such setting' };
}

/** One setting: its form, or its values for those who only read, and every change of it. */
export default async function SettingPage({ params }: Params) {
  const { db, person } = await enter('/settings/[key]');
  const key = keyOf((await params).key);
  if (!key) notFound();
  const [[setting], history] = await Promise.all([listSettings(db, [key]), settingHistory(db, key)]);
  if (!setting) notFound();
  const { title, about } = SETTING_GROUPS[key];
  const fields = fieldsOf(key);
  return (
    <Page
      title={title}
      lead={about}
      breadcrumb={[{ label: 'Settings', href: '/settings' }]}
      measure="reading"
    >
      {may(person, 'changeSettings') ? (
        <SettingForm
          key={setting.revision}
          settingKey={key}
          fields={fields.map(([name, field]) => ({
            name,
            field,
            bounds: boundsOf(key)[name] ?? { min: null, max: null },
            came: valueWords(field, setting.defaults[name]),
          }))}
          start={entryOf(key, setting.value)}
          defaults={entryOf(key, setting.defaults)}
          revision={setting.revision}
        />
      ) : (
        <>
          <p>{settingWords.notPermitted(person.name)}</p>
          <DefinitionList
            items={fields.map(([name, field]) => ({
              term: field.label,
              value: valueWords(field, setting.value[name]),
              note: `default ${valueWords(field, setting.defaults[name])}`,
            }))}
          />
        </>
      )}
      <Section title="History" note={history.length === 1 ? '1 change' : `${history.length} changes`}>
        {history.length === 0 ? <p>Nobody has changed it: it is as it came with the program.</p> : null}
        <ol className={styles.history} reversed>
          {[...history].reverse().map((change) => (
            <Change key={change.seq} settingKey={key} change={change} />
          ))}
        </ol>
      </Section>
    </Page>
  );
}

function Change({ settingKey, change }: { settingKey: SettingKey; change: SettingChange }) {
  const { doneAt, person, because, before, after } = change;
  const rows = fieldsOf(settingKey).flatMap(([name, field]) => {
    const [was, is] = [before[name], after[name]];
    if (JSON.stringify(was) === JSON.stringify(is)) return [];
    const old = was === undefined ? 'not there yet' : valueWords(field, was);
    return [`${field.label}: ${old} → ${is === undefined ? 'gone' : valueWords(field, is)}`];
  });
  return (
    <li>
      <p>
        {person ?? 'Nobody'} on {momentWords(doneAt)}: {because}
      </p>
      <ul>
        {rows.map((row) => (
          <li key={row}>{row}</li>
        ))}
      </ul>
    </li>
  );
}
