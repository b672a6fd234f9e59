export { expectAccessible } from './accessible';
export { SCREENS, type Screen, setScreen, setTheme, THEMES, type Theme } from './appearance';
export type { Hospital } from './hospital';
export { expect, test } from './test';
