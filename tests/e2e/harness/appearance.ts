import type { Page } from '@playwright/test';

export const THEMES = ['light', 'dark'] as const;
export type Theme = (typeof THEMES)[number];

/** Widths in CSS pixels that screens are judged at: a desk, a tablet held upright, a telephone, the narrowest. */
export const SCREENS = {
  desk: { width: 1440, height: 900 },
  tablet: { width: 820, height: 1180 },
  phone: { width: 390, height: 844 },
  narrowest: { width: 320, height: 640 },
} as const;
export type Screen = keyof typeof SCREENS;

/** Shows the present page in a theme, whatever the person chose. Choose again after a full page load. */
export async function setTheme(page: Page, theme: Theme): Promise<void> {
  await page.emulateMedia({ colorScheme: theme });
  await page.evaluate((chosen) => {
    document.documentElement.dataset.theme = chosen;
  }, theme);
}

/** Sets the size of the window to one of the judged screens. */
export async function setScreen(page: Page, screen: Screen): Promise<void> {
  await page.setViewportSize(SCREENS[screen]);
}
