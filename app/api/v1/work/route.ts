import { now } from '@/app/_server/clock';
import { oneOf } from '@/app/api/v1/_reading/one';
import { workLines } from '@/app/work/queue-lines';
import { loadWorkQueue } from '@/db/queries/turns/workQueue';

/** What is to be done in sterile services, the most urgent first. */
export const GET = oneOf('GET /api/v1/work', { what: 'list' }, async ({ db, person }) => {
  const at = now();
  const queue = await loadWorkQueue(db, at);
  return { leadMinutes: queue.leadMinutes, lines: workLines(queue, person.role, at) };
});
