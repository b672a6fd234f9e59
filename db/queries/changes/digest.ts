import { createHash } from 'node:crypto';

/** SHA-256 over a value as JSON, in lower hex. The value's keys must always come in the same order. */
export function digestOf(value: unknown): string {
  return createHash('sha256').update(JSON.stringify(value)).digest('hex');
}
