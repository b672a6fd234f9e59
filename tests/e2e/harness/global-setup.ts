import { rmSync } from 'node:fs';
import { prepareProgram, runOnDatabase } from '../../../scripts/bootstrap/prepare.mjs';
import { HOSPITALS, TEMPLATE } from './hospital';

/**
 * Makes sure there is a build of the present sources, and loads the demo once, as of today: every spec file then
 * starts from a copy. With BASE_URL the tests use that server as it is, and nothing is prepared.
 */
export default async function setUp(): Promise<void> {
  if (process.env.BASE_URL) return;
  await prepareProgram({ build: true, say: (line) => console.log(line) });
  rmSync(HOSPITALS, { recursive: true, force: true });
  await runOnDatabase('prepare-database.ts', { database: TEMPLATE });
}
