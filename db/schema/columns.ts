import { customType } from 'drizzle-orm/sqlite-core';

/** JSON kept as text; what comes back is parsed by the mapper's zod schema, never trusted as typed here. */
export const json = customType<{ data: unknown; driverData: string }>({
  dataType: () => 'text',
  toDriver: (value) => JSON.stringify(value),
  fromDriver: (text) => JSON.parse(text),
});

/** A boolean kept as 0 or 1, or unknown as NULL. */
export const flag = customType<{ data: boolean; driverData: number }>({
  dataType: () => 'integer',
  toDriver: (value) => (value ? 1 : 0),
  fromDriver: (number) => number === 1,
});
