import type { Problem } from '@/lib/identity/result';
import { placeWords as words } from '@/lib/wording/places';
import type { Queries } from '../../client';
import { places } from '../../schema';

/** Two places never share a name, however it is written. `but`: the place that is being renamed. */
export async function nameTaken(write: Queries, name: string, but: string | null): Promise<Problem | null> {
  const rows = await write.select({ id: places.id, name: places.name }).from(places);
  const twin = rows.find((row) => row.id !== but && row.name.toLowerCase() === name.toLowerCase());
  return twin ? { path: ['name'], code: 'taken', message: words.nameTaken(twin.name) } : null;
}
