'use client';

import { usePathname } from 'next/navigation';
import { useCallback, useId, useRef, useState } from 'react';
import { classNames } from './class-names';
import styles from './person-switch.module.css';
import { useDismiss } from './use-dismiss';

export type Person = { id: string; name: string; role: string };

/**
 * Who is acting, and the change of it. Sends a form with `person` (the id) and `returnTo` (the present page) to `action`.
 * A disclosure of submit buttons: each person is one press.
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
  const listId = useId();
  const box = useRef<HTMLDivElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const close = useCallback((byEscape: boolean) => {
    setOpen(false);
    if (byEscape) button.current?.focus();
  }, []);
  useDismiss(open, box, close);

  if (people.length === 0) return null;
  return (
    <div ref={box} className={styles.switch}>
      <button
        ref={button}
        type="button"
        className={styles.trigger}
        aria-expanded={open}
        aria-controls={listId}
        onClick={() => setOpen(!open)}
      >
        <span className={styles.label}>Acting as</span>
        <span className={styles.name}>{current ? current.name : 'nobody yet'}</span>
        {current ? <span className={styles.role}>{current.role}</span> : null}
      </button>
      <form
        id={listId}
        hidden={!open}
        className={styles.panel}
        action={action}
        method={typeof action === 'string' ? 'post' : undefined}
        // Closing at once would take the pressed button out of the form before the browser has read it.
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
                <span className={styles.personName}>{person.name}</span>
                <span className={styles.role}>{person.role}</span>
              </button>
            </li>
          ))}
        </ul>
      </form>
    </div>
  );
}
