import { isRepeated } from './repeated';

/** NIST SP 800-63B asks for 15 characters where a password stands alone, and for no rules of composition. */
export const SHORTEST_PASSWORD = 15;
export const LONGEST_PASSWORD = 128;
export const PIN_LENGTH = { least: 6, most: 8 } as const;

/** A PIN is digits alone, and no password is so short: one field can take either. */
export const isPin = (secret: string): boolean => /^\d{6,8}$/.test(secret);

export type PinFault = 'notDigits' | 'pattern';

/** What is wrong with a PIN its owner chose. */
export function pinFaults(pin: string): PinFault[] {
  if (!isPin(pin)) return ['notDigits'];
  const few = new Set(pin).size < 3;
  return few || isRepeated(pin) || isDay(pin) ? ['pattern'] : [];
}

/** Six or eight digits that read as a day, the first thing tried of a PIN: 190784, 19840719, 07191984. */
function isDay(pin: string): boolean {
  const shapes = [
    /^(0[1-9]|[12]\d|3[01])(0[1-9]|1[0-2])(\d{2}|(19|20)\d{2})$/,
    /^(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])(\d{2}|(19|20)\d{2})$/,
    /^(19|20)\d{2}(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])$/,
  ];
  return shapes.some((shape) => shape.test(pin));
}
