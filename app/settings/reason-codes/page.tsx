import type { Metadata } from 'next';
import { enter } from '@/app/_server/enter';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { listReasons } from '@/db/queries/reasons/reasons';
import { may } from '@/lib/people/permissions';
import { type ReasonKind, reasonKind } from '@/lib/reasons/reason';
import { ReasonForm } from './reason-form';
import { ReasonList } from './reason-list';

export const metadata: Metadata = { title: 'Reasons' };
export const dynamic = 'force-dynamic';

const SECTIONS: Record<ReasonKind, { title: string; note: string; empty: string }> = {
  waste: {
    title: 'Why something was wasted',
    note: 'named at the record of use, and where stock is written off',
    empty: 'No reason for waste yet: none is offered, and every report says “not stated”.',
  },
  delay: {
    title: 'Why a case was delayed',
    note: 'named with the minutes, at the record of use',
    empty: 'No reason for delay yet: a delay is recorded in words, and reports say “not stated”.',
  },
};

/** The hospital's own reasons for delay and waste: everybody reads them, a theatre manager or administrator keeps them. */
export default async function ReasonsPage() {
  const { db, person } = await enter('/settings/reason-codes');
  const reasons = await listReasons(db);
  const mayKeep = may(person, 'keepReasons');
  return (
    <Page
      measure="reading"
      title="Reasons"
      lead="What this hospital names as the reason for a delay or for waste. A reason keeps its code and its words for good, so that what was recorded goes on saying what it said: to say it otherwise, retire it and add another."
      breadcrumb={[{ label: 'Settings', href: '/settings' }]}
      actions={<LinkButton href="/reports/costs#reasons">What they were named for</LinkButton>}
    >
      {mayKeep ? null : <p>A theatre manager or administrator keeps this list.</p>}
      {[...reasonKind.options].reverse().map((kind) => {
        const own = reasons.filter((one) => one.kind === kind);
        return (
          <Section key={kind} title={SECTIONS[kind].title} note={SECTIONS[kind].note}>
            {own.length === 0 ? (
              <p>{SECTIONS[kind].empty}</p>
            ) : (
              <ReasonList
                key={own.map(({ id, revision }) => `${id} ${revision}`).join()}
                kind={kind}
                label={SECTIONS[kind].title}
                reasons={own}
                mayKeep={mayKeep}
              />
            )}
          </Section>
        );
      })}
      {mayKeep ? (
        <Section title="Add a reason" note="it goes to the end of its list">
          <ReasonForm />
        </Section>
      ) : null}
    </Page>
  );
}
