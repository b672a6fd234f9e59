import { healthLights } from '@/app/_server/health';
import { oneOf } from '@/app/api/v1/_reading/one';

/** How the running program stands: disk, backups, ledger and clock. */
export const GET = oneOf('GET /api/v1/health', { what: 'health' }, async () => ({
  lights: await healthLights(),
}));
