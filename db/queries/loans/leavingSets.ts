import { and, eq, inArray, isNotNull } from 'drizzle-orm';
import type { Queries } from '../../client';
import { loans, loanTrays } from '../../schema';

/**
 * Sets that came on loan and are on their way back to the lender, or gone: as a part of another query.
 * A tray without a tag is no set yet: a NULL among them would make every NOT IN unknown.
 */
export const leavingSets = (read: Pick<Queries, 'select'>) =>
  read
    .select({ id: loanTrays.setId })
    .from(loanTrays)
    .innerJoin(loans, eq(loans.id, loanTrays.loanId))
    .where(and(inArray(loans.state, ['goingBack', 'goneBack']), isNotNull(loanTrays.setId)));
