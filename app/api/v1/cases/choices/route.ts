import { oneOf } from '@/app/api/v1/_reading/one';
import { bookingChoices } from '@/db/queries/cases';

/** Theatres and surgeons that a booking chooses from. */
export const GET = oneOf('GET /api/v1/cases/choices', { what: 'choice' }, ({ db }) => bookingChoices(db));
