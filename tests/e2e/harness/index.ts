export { expectAccessible } from './accessible';
export { actAs } from './act-as';
export { SCREENS, type Screen, setScreen, setTheme, THEMES, type Theme } from './appearance';
export type { Hospital } from './hospital';
export { ALONE, expect, test } from './test';
