'use client';

import type { ReactNode } from 'react';
import { Tabs as RacTabs, Tab, TabList, TabPanel } from 'react-aria-components';
import styles from './tabs.module.css';
import { useUrlParam } from './url-state';

export type TabItem = { id: string; label: ReactNode; content: ReactNode };

/**
 * Views of one thing side by side; arrow keys move between them.
 *
 * @param urlKey keeps the open tab in the address (`?view=holes`), so a link can point at it
 */
export function Tabs({
  label,
  items,
  urlKey,
  initial,
}: {
  label: string;
  items: readonly TabItem[];
  urlKey?: string;
  initial?: string;
}) {
  const first = initial ?? items[0]?.id ?? '';
  const [inUrl, setInUrl] = useUrlParam(urlKey ?? '', first);
  const known = items.some((item) => item.id === inUrl) ? inUrl : first;
  const controlled =
    urlKey === undefined
      ? { defaultSelectedKey: first }
      : { selectedKey: known, onSelectionChange: (key: string | number) => setInUrl(String(key)) };
  return (
    <RacTabs className={styles.tabs ?? ''} {...controlled}>
      <TabList aria-label={label} className={styles.list ?? ''}>
        {items.map((item) => (
          <Tab key={item.id} id={item.id} className={styles.tab ?? ''}>
            {item.label}
          </Tab>
        ))}
      </TabList>
      {items.map((item) => (
        <TabPanel key={item.id} id={item.id} className={styles.panel ?? ''}>
          {item.content}
        </TabPanel>
      ))}
    </RacTabs>
  );
}
