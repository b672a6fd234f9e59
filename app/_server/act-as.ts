'use server';

import { revalidatePath } from 'next/cache';
import { cookies } from 'next/headers';
import { personId } from '@/lib/identity/ids';
import { ACTING_COOKIE } from './person';

/** Chooses who acts at this screen from now on. An id that is not a person's changes nothing. */
export async function actAs(form: FormData): Promise<void> {
  const chosen = personId.safeParse(form.get('person'));
  if (!chosen.success) return;
  const jar = await cookies();
  jar.set(ACTING_COOKIE, chosen.data, { httpOnly: true, sameSite: 'lax', path: '/', maxAge: 60 * 60 * 12 });
  revalidatePath('/', 'layout');
}
