'use client';

import { useRouter } from 'next/navigation';
import { Button } from '@/app/_ui/button';
import { VisuallyHidden } from '@/app/_ui/visually-hidden';
import styles from './theatre-list.module.css';

const PAGES = {
  day: { action: '/theatre-list', name: 'date', label: 'Day' },
  week: { action: '/theatre-list/week', name: 'from', label: 'From' },
  theatres: { action: '/theatre-list/theatres', name: 'from', label: 'From' },
} as const;

/** Leads to the list of any day, or to any week. */
export function GoToDay({ date, leadsTo = 'day' }: { date: string; leadsTo?: keyof typeof PAGES }) {
  const router = useRouter();
  const { action, name, label } = PAGES[leadsTo];
  return (
    <form
      className={styles.goTo}
      action={action}
      onSubmit={(event) => {
        event.preventDefault();
        const wanted = new FormData(event.currentTarget).get(name);
        if (typeof wanted === 'string' && wanted !== '') router.push(`${action}?${name}=${wanted}`);
      }}
    >
      <label className={styles.day}>
        <VisuallyHidden>{label}</VisuallyHidden>
        <input type="date" name={name} defaultValue={date} key={date} required />
      </label>
      <Button type="submit">Go</Button>
    </form>
  );
}
