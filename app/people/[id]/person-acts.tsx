'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { Button } from '@/app/_ui/button';
import { ButtonRow } from '@/app/_ui/button-row';
import { ConfirmDialog } from '@/app/_ui/confirm-dialog';
import { Section } from '@/app/_ui/section';
import { SelectField } from '@/app/_ui/select-field';
import { NOT_REACHED } from '@/app/_ui/send-secret';
import { showToast } from '@/app/_ui/toast';
import { sendJson } from '@/app/sets/_parts/send-json';
import { ROLE_WORDS, type Role, role as roles } from '@/lib/people/role';
import { ShownOnce } from '../_parts/shown-once';
import styles from '../people.module.css';
import { BadgeCard } from './badge-card';

type Made = { firstPassword?: string; code?: string } | null;

/** What an administrator can do about one person. Each asks first where it takes something away. */
export function PersonActs({
  id,
  name,
  role,
  left,
  hasBadge,
  isMe,
}: {
  id: string;
  name: string;
  role: Role;
  left: boolean;
  hasBadge: boolean;
  isMe: boolean;
}) {
  const router = useRouter();
  const [chosen, setChosen] = useState<string>(role);
  const [made, setMade] = useState<Made>(null);
  const [badge, setBadge] = useState<string | null>(null);

  /** Answers a sentence where it was refused. */
  async function act(body: Record<string, string>, done: string): Promise<string | undefined> {
    const sent = await sendJson<Made>(`/api/v1/people/${id}`, body);
    if (!sent.ok) return sent.sentence;
    if (sent.value?.firstPassword) setMade(sent.value);
    if (sent.value?.code) setBadge(sent.value.code);
    // what is shown once says it by being there, and nothing lies over it
    if (!sent.value?.firstPassword && !sent.value?.code)
      showToast({ tone: 'good', word: 'Done', text: done });
    router.refresh();
    return undefined;
  }

  async function press(body: Record<string, string>, done: string) {
    const refusal = await act(body, done).catch(() => NOT_REACHED);
    if (refusal) showToast({ tone: 'stop', word: 'Not done', text: refusal });
  }

  return (
    <div className={styles.acts}>
      {made?.firstPassword ? (
        <ShownOnce
          title="A password was made"
          what={`The password of ${name}`}
          secret={made.firstPassword}
          after="Tell it to them alone. They choose their own as they sign in."
        />
      ) : null}
      {badge ? <BadgeCard name={name} role={ROLE_WORDS[role]} code={badge} /> : null}
      {left ? (
        <Section title="Coming back">
          <ButtonRow>
            <Button onClick={() => press({ act: 'return' }, `${name} works here again.`)}>
              {name} works here again
            </Button>
          </ButtonRow>
        </Section>
      ) : (
        <>
          <Section title="Role" note="what they may do follows at once">
            <div className={styles.form}>
              <SelectField
                name="role"
                label="Role"
                options={roles.options.map((one) => ({ value: one, label: ROLE_WORDS[one] }))}
                value={chosen}
                onValue={setChosen}
              />
              <Button
                disabled={chosen === role}
                onClick={() => press({ act: 'role', role: chosen }, `${name} has another role.`)}
              >
                Give this role
              </Button>
            </div>
          </Section>
          <Section title="Badge and password">
            <ButtonRow>
              <ConfirmDialog
                title={hasBadge ? `A new badge for ${name}?` : `A badge for ${name}?`}
                confirm="Issue the badge"
                trigger={{
                  label: hasBadge ? 'Issue a new badge' : 'Issue a badge',
                  kind: hasBadge ? 'plain' : 'primary',
                }}
                onConfirm={() => act({ act: 'badge' }, 'The badge is ready to print.')}
              >
                The card is shown once, to be printed now.
                {hasBadge ? ' The badge they have stops working.' : ''}
              </ConfirmDialog>
              {hasBadge ? (
                <ConfirmDialog
                  title={`Withdraw the badge of ${name}?`}
                  confirm="Withdraw the badge"
                  danger
                  trigger={{ label: 'Withdraw the badge' }}
                  onConfirm={() => act({ act: 'withdrawBadge' }, 'The badge lets nobody in any more.')}
                >
                  It lets nobody in from now on.
                </ConfirmDialog>
              ) : null}
              <ConfirmDialog
                title={`Reset the password of ${name}?`}
                confirm="Reset the password"
                trigger={{ label: 'Reset the password' }}
                onConfirm={() => act({ act: 'password' }, 'A new password was made.')}
              >
                {isMe
                  ? 'This is yours: your session ends at once. Change it in your account instead.'
                  : 'Their present one stops working and their sessions end. The new one is shown once.'}
              </ConfirmDialog>
              <Button onClick={() => press({ act: 'unlock' }, `${name} need not wait any more.`)}>
                Lift the waits
              </Button>
            </ButtonRow>
          </Section>
          <Section title="Leaving">
            <ButtonRow>
              <ConfirmDialog
                title={`${name} has left?`}
                confirm={`${name} has left`}
                danger
                trigger={{ label: 'They have left' }}
                onConfirm={() => act({ act: 'leave' }, `${name} has left.`)}
              >
                Their sessions end and nothing lets them in. What they did keeps their name.
              </ConfirmDialog>
            </ButtonRow>
          </Section>
        </>
      )}
    </div>
  );
}
