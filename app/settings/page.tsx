import type { Metadata } from 'next';
import Link from 'next/link';
import { enter } from '@/app/_server/enter';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { remarksSwitchedOff } from '@/db/queries/planner';
import { listReasons } from '@/db/queries/reasons/reasons';
import { listSettings, type SettingOnFile } from '@/db/queries/settings';
import { REMARKS } from '@/lib/calculations/plateRemarks/schema';
import { may } from '@/lib/people/permissions';
import { offered } from '@/lib/reasons/reason';
import { valueWords } from '@/lib/settings/entry';
import { fieldsOf, SETTING_GROUPS, SETTING_KEYS } from '@/lib/settings/fields';
import { HOSPITAL_ZONE } from '@/lib/theatre/localTime';
import { momentWords } from '@/lib/wording/changes';
import { settingWords } from '@/lib/wording/settings';
import styles from './settings.module.css';

export const metadata: Metadata = { title: 'Settings' };
export const dynamic = 'force-dynamic';

/** Every local setting: what stands, what it came with, who set it and when. Everybody may read them. */
export default async function SettingsPage() {
  const { db, person } = await enter('/settings');
  const [settings, off, reasons] = await Promise.all([
    listSettings(db, SETTING_KEYS),
    remarksSwitchedOff(db),
    listReasons(db),
  ]);
  const mayChange = may(person, 'changeSettings');
  return (
    <Page
      title="Settings"
      lead="What this hospital decides for itself. Every limit the program goes by is here, with the value it came with, who set it, and why."
    >
      {mayChange ? null : <p>{settingWords.notPermitted(person.name)}</p>}
      {settings.map((setting) => (
        <Group key={setting.key} setting={setting} mayChange={mayChange} />
      ))}
      <Section title="Kept elsewhere">
        <dl className={styles.fields}>
          <div>
            <dt>Remarks on plans</dt>
            <dd>
              <strong>
                {off.length === 0
                  ? `all ${REMARKS.length} are shown`
                  : `${off.length} of ${REMARKS.length} switched off`}
              </strong>
              <span className={styles.about}>
                Advisory, each with its published source; none blocks a plan. They are switched where they are
                shown, on <Link href="/plans">Plans</Link>.
              </span>
            </dd>
          </div>
          <div>
            <dt>The list of reasons</dt>
            <dd>
              <strong>
                {reasons.length === 0
                  ? 'none yet'
                  : `${offered(reasons, 'waste').length} for waste, ${offered(reasons, 'delay').length} for delay in use`}
              </strong>
              <span className={styles.about}>
                The hospital’s own list, kept on <Link href="/settings/reason-codes">Reasons</Link>.
              </span>
            </dd>
          </div>
          <div>
            <dt>Time zone of the hospital</dt>
            <dd>
              <strong>{HOSPITAL_ZONE}</strong>
              <span className={styles.about}>
                Days begin and clocks are shown in it, whatever zone the machine or the reader is in. It is
                part of this version of the program and cannot be changed here.
              </span>
            </dd>
          </div>
        </dl>
      </Section>
    </Page>
  );
}

function Group({ setting, mayChange }: { setting: SettingOnFile; mayChange: boolean }) {
  const { key, value, defaults, changedBy, changedAt } = setting;
  const { title, about } = SETTING_GROUPS[key];
  return (
    <Section
      id={key}
      title={title}
      note={
        changedAt === null
          ? 'as it came with the program'
          : `set by ${changedBy ?? 'nobody known'} on ${momentWords(changedAt)}`
      }
      actions={<Link href={`/settings/${key}`}>{mayChange ? 'Change, or see its history' : 'History'}</Link>}
    >
      <p className={styles.lead}>{about}</p>
      <dl className={styles.fields}>
        {fieldsOf(key).map(([name, field]) => {
          const [now, came] = [valueWords(field, value[name]), valueWords(field, defaults[name])];
          return (
            <div key={name}>
              <dt>{field.label}</dt>
              <dd>
                <strong>{now}</strong>
                {now === came ? (
                  <span className={styles.came}>the default</span>
                ) : (
                  <span className={styles.came}>
                    <Status tone="neutral" look="plain">
                      our own
                    </Status>{' '}
                    default {came}
                  </span>
                )}
                <span className={styles.about}>
                  {field.about} <em>{field.source}.</em>
                </span>
              </dd>
            </div>
          );
        })}
      </dl>
    </Section>
  );
}
