'use client';

import { useState } from 'react';
import { type Theme, themeCookie } from './theme';
import styles from './theme-toggle.module.css';

const next: Record<Theme, Theme> = { auto: 'light', light: 'dark', dark: 'auto' };
const words: Record<Theme, string> = { auto: 'Auto', light: 'Light', dark: 'Dark' };

/** Steps through auto, light and dark. The choice is a cookie, so the next page arrives in it without a flash. */
export function ThemeToggle({ initial }: { initial: Theme }) {
  const [theme, setTheme] = useState(initial);

  function step() {
    const chosen = next[theme];
    setTheme(chosen);
    document.documentElement.dataset.theme = chosen;
    const secure = window.location.protocol === 'https:' ? '; secure' : '';
    // biome-ignore lint/suspicious/noDocumentCookie: the Cookie Store API is missing in Firefox ESR, still common on hospital desks
    document.cookie = `${themeCookie}=${chosen}; path=/; max-age=31536000; samesite=lax${secure}`;
  }

  return (
    <button
      type="button"
      className={styles.toggle}
      onClick={step}
      title="Change between auto, light and dark"
    >
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
        <circle cx="8" cy="8" r="6.25" fill="none" stroke="currentColor" strokeWidth="1.5" />
        {theme === 'auto' ? <path d="M8 1.75a6.25 6.25 0 0 1 0 12.5Z" fill="currentColor" /> : null}
        {theme === 'dark' ? <circle cx="8" cy="8" r="6.25" fill="currentColor" /> : null}
      </svg>
      <span className={styles.word}>
        <span className={styles.prefix}>Theme: </span>
        {words[theme]}
      </span>
    </button>
  );
}
