import 'server-only';
import { type Answer, carrying } from '@/app/_server/answer';

/**
 * What is read as JSON, never kept on the way. What the program holds by name (`Map`) is an object by name, and a `Set` is a
 * list: the description of the API says the same of their types.
 */
export function readAnswer<T>(value: T, headers: Record<string, string> = {}): Answer<T> {
  return carrying(
    new Response(JSON.stringify(value, asJson), {
      headers: {
        'Content-Type': 'application/json',
        'Cache-Control': 'no-store, no-transform',
        ...headers,
      },
    }),
  );
}

function asJson(_name: string, value: unknown): unknown {
  if (value instanceof Map) return Object.fromEntries(value);
  if (value instanceof Set) return [...value];
  return value;
}
