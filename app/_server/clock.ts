import 'server-only';
import { randomUUID } from 'node:crypto';
import type { NewId } from '@/lib/identity/ids';

/** The moment, as an ISO instant; the one place where the program looks at a clock. */
export function now(): string {
  return new Date().toISOString();
}

/** A new id with its prefix; the one place where the program rolls dice. */
export const newId: NewId = (prefix) => `${prefix}_${randomUUID()}`;
