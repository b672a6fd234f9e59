import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { migrate } from '@/db/migrate';

declare module 'vitest' {
  interface ProvidedContext {
    /** A migrated database without any rows of its own. */
    emptyTemplate: string;
    /** Where the demo template is, or will be once a test asks for it. */
    demoTemplate: string;
    historyTemplate: string;
    /** A folder for copies, deleted at the end. */
    databaseFolder: string;
  }
}

/** Files in memory where there are such: what is on disk at a power cut is for the fault runs, not for these tests. */
const IN_MEMORY = '/dev/shm';

/**
 * Migrates one database before all tests; each test works on a copy of the file, which takes a few milliseconds.
 */
export default function setUp(project: TestProject): () => void {
  const folder = mkdtempSync(join(existsSync(IN_MEMORY) ? IN_MEMORY : tmpdir(), 'kitwright-tests-'));
  mkdirSync(join(folder, 'copies'));
  const emptyTemplate = join(folder, 'empty.sqlite');
  migrate(emptyTemplate);
  project.provide('emptyTemplate', emptyTemplate);
  project.provide('demoTemplate', join(folder, 'demo.sqlite'));
  project.provide('historyTemplate', join(folder, 'history.sqlite'));
  project.provide('databaseFolder', join(folder, 'copies'));
  return () => rmSync(folder, { recursive: true, force: true });
}
