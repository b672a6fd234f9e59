/** Wrong secrets that cost nothing: everybody mistypes. */
const FREE = 2;
const LONGEST_SECONDS = 60;

/**
 * How long one person waits at one place after so many wrong secrets in a row: 0, 0, 1, 2, 4, 8 … seconds, never more
 * than a minute, so that a stranger's guessing slows the guesser and locks nobody out.
 */
export function waitSeconds(failures: number): number {
  if (failures <= FREE) return 0;
  return Math.min(2 ** (failures - FREE - 1), LONGEST_SECONDS);
}
