'use client';

import { usePathname } from 'next/navigation';
import { useState } from 'react';
import { DialogTrigger, Popover, Button as RacButton, Dialog as RacDialog } from 'react-aria-components';
import { classNames } from './class-names';
import styles from './person-switch.module.css';

export type Person = { id: string; name: string; role: string };

/**
 * Who is acting, and the change of it. Sends a form with `person` (the id) and `returnTo` (the present page) to `action`.
 *
 * @param current the person acting, or `null` when nobody is chosen yet
 * @param action  where the form goes: an address (default `/people/acting`, POST) or a server action
 */
export function PersonSwitch({
  people,
  current,
  action = '/people/acting',
}: {
  people: readonly Person[];
  current: Person | null;
  action?: string | ((data: FormData) => void | Promise<void>);
}) {
  const pathname = usePathname();
  const [open, setOpen] = useState(false);
  if (people.length === 0) return null;
  return (
    <DialogTrigger isOpen={open} onOpenChange={setOpen}>
      <RacButton className={styles.trigger ?? ''}>
        <span className={styles.label}>Acting as</span>
        <span className={styles.name}>{current ? current.name : 'nobody yet'}</span>
        {current ? <span className={styles.role}>{current.role}</span> : null}
      </RacButton>
      <Popover className={styles.popover ?? ''} placement="bottom end" offset={0}>
        <RacDialog aria-label="Choose who is acting" className={styles.dialog ?? ''}>
          <form
            action={action}
            method={typeof action === 'string' ? 'post' : undefined}
            onSubmit={() => setTimeout(() => setOpen(false))}
          >
            <input type="hidden" name="returnTo" value={pathname} />
            <ul className={styles.people}>
              {people.map((person) => (
                <li key={person.id}>
                  <button
                    type="submit"
                    name="person"
                    value={person.id}
                    className={classNames(styles.person, person.id === current?.id && styles.current)}
                    aria-current={person.id === current?.id || undefined}
                  >
                    <span className={styles.name}>{person.name}</span>
                    <span className={styles.role}>{person.role}</span>
                  </button>
                </li>
              ))}
            </ul>
          </form>
        </RacDialog>
      </Popover>
    </DialogTrigger>
  );
}
