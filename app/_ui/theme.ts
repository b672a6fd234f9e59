/** The reader's choice of theme, kept in the cookie `theme` so that the server renders the right one at once. */
export type Theme = 'light' | 'dark' | 'auto';

export const themeCookie = 'theme';

/** Reads the cookie's value; anything unknown is `auto` (the system's own choice). */
export function parseTheme(value: string | undefined): Theme {
  return value === 'light' || value === 'dark' ? value : 'auto';
}
