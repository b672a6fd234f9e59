import { sql } from 'drizzle-orm';
import { expect, it } from 'vitest';
import { accountsOfOwner } from '@/db/queries/consignment/ownedMoves';
import { listOwners, lotsOfNobodyStated } from '@/db/queries/consignment/owners';
import { listUsageOrders } from '@/db/queries/consignment/usageOrders';
import { THE_PROGRAM } from '@/db/reader';
import { unaccounted } from '@/lib/consignment/account';
import { historyDatabase } from '../setup/database';

it('the demo has consigned stock of two owners: told of a quarter at a time, with the newest uses waiting', async () => {
  const { read } = await historyDatabase();
  const reading = { read, reader: THE_PROGRAM } as const;
  const owners = await listOwners(reading);
  expect(owners.map(({ name, lines }) => [name, lines])).toEqual([
    ['Corrow Hill Loan Sets', 3],
    ['Sallowfen Surgical', 3],
  ]);
  for (const { id } of owners)
    for (const account of accountsOfOwner(read, id)) expect(unaccounted(account)).toBe(0);
  const orders = await listUsageOrders(reading);
  expect(orders.length).toBeGreaterThan(4);
  expect(orders.every(({ state }) => state === 'sent')).toBe(true);
  // only what the newest order of each owner asks for may still come
  expect(read.all(sql`SELECT lender_id FROM usage_orders WHERE settled_at IS NULL`)).toHaveLength(2);
  expect(await lotsOfNobodyStated(reading)).toMatchObject([{ code: 'SF-PH35-03', lot: 'PH35-0417' }]);
});
