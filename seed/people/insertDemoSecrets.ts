import type { Queries } from '@/db/client';
import { insertMany } from '@/db/insertMany';
import { credentials } from '@/db/schema';
import { hashCode } from '@/db/secrets';
import { DEMO_BADGES } from '@/lib/people/demo';
import { PEOPLE } from '../hospital/people';

/** Argon2id of the two secrets of `lib/people/demo.ts`, hashed beforehand so that the demo loads at once. A test checks them. */
const PASSWORD_HASH =
  '$argon2id$v=19$m=19456,t=2,p=1$Noog7Qj5eJyy6LbUj2RuZQ$NBgQKF5yQ27GVliGUGnoIryNtL5++6ys1DTgpX6Du7U';
const PIN_HASH =
  '$argon2id$v=19$m=19456,t=2,p=1$91Gj+eDPQQlKv8umLcUnag$7UNHegxsPT7YDWaR/mPUfLNFi08U34r34zigSDgLaVE';

/** Gives everybody of the demo the demo's password and PIN, and a badge of their own. */
export async function insertDemoSecrets(write: Queries, now: string): Promise<void> {
  await insertMany(
    write,
    credentials,
    PEOPLE.map(({ id }) => ({
      personId: id,
      passwordHash: PASSWORD_HASH,
      pinHash: PIN_HASH,
      badgeHash: hashCode(DEMO_BADGES[id] ?? ''),
      mustChangePassword: false,
      changedAt: now,
    })),
  );
}
