'use client';

import { useRouter } from 'next/navigation';
import { Button } from '@/app/_ui/button';
import styles from './theatre-list.module.css';

/** Leads to the list of any day. */
export function GoToDay({ date }: { date: string }) {
  const router = useRouter();
  return (
    <form
      className={styles.goTo}
      action="/theatre-list"
      onSubmit={(event) => {
        event.preventDefault();
        const wanted = new FormData(event.currentTarget).get('date');
        if (typeof wanted === 'string' && wanted !== '') router.push(`/theatre-list?date=${wanted}`);
      }}
    >
      <label className={styles.day}>
        <span>Day</span>
        <input type="date" name="date" defaultValue={date} key={date} required />
      </label>
      <Button type="submit">Go</Button>
    </form>
  );
}
