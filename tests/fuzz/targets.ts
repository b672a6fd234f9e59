import { servedApi } from './api/served';
import { bodies } from './bodies';
import { lists } from './lists';
import { plans } from './plans';
import { rules } from './rules';
import { scans } from './scans';
import type { Target } from './target';
import { workbooks } from './workbooks';

/** Everything that takes what others made, by its functions. */
export const TARGETS: readonly Target[] = [scans, lists, workbooks, bodies, plans, rules];

/** The same, and the built program over HTTP. */
export const EVERY_TARGET: readonly Target[] = [...TARGETS, servedApi];
