import { accessSync, constants, mkdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, VAR } from './places.mjs';
import { asPlainProblem, PlainProblem } from './plain-problem.mjs';

/** Throws a PlainProblem unless files can be made in the project's folder. */
export function requireWritableFolder() {
  try {
    accessSync(ROOT, constants.W_OK);
    mkdirSync(VAR, { recursive: true });
    const probe = join(VAR, `.write-test-${process.pid}`);
    writeFileSync(probe, 'x');
    rmSync(probe);
  } catch (error) {
    throw asPlainProblem(error, { folder: ROOT });
  }
}

/**
 * Throws a PlainProblem unless the disk has room. A system that cannot tell is trusted.
 * @param {string} folder
 * @param {number} megabytes
 * @param {string} purpose e.g. "installing the packages"
 */
export function requireSpace(folder, megabytes, purpose) {
  let free = Number.POSITIVE_INFINITY;
  try {
    const disk = statfsSync(folder);
    free = (disk.bavail * disk.bsize) / 1e6;
  } catch {
    return;
  }
  if (free < megabytes) {
    throw new PlainProblem(
      `The disk that holds ${folder} is too full: ${purpose} needs about ${megabytes} MB and ${Math.floor(free)} MB are free.`,
    );
  }
}
