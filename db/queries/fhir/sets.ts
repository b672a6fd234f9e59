import { sql } from 'drizzle-orm';
import type { SetFacts } from '@/lib/fhir/device';
import { turnStep } from '@/lib/sets/setState';
import { mayRead, type Reading } from '../../reader';
import { among, every, following, type PageAsked, type PageOf, pageOf } from './conditions';

export interface SetsAsked extends PageAsked {
  codes: readonly string[] | null;
  /** Out of service (1) or not (0). */
  withdrawn: readonly number[] | null;
}

interface Row {
  id: string;
  code: string;
  owner: 'ours' | 'loan';
  owner_note: string | null;
  lender: string | null;
  step: string;
  held_because: string | null;
  withdrawn: number;
  use_by: string | null;
  place_id: string | null;
  place: string | null;
  configuration_code: string;
  configuration: string;
  version_id: string;
}

/** Sets as they are now, ours and on loan, by id. */
export async function setsPage({ read, reader }: Reading, asked: SetsAsked): Promise<PageOf<SetFacts>> {
  mayRead({ reader }, 'readHospital');
  const rows = await read.all<Row>(sql`
    SELECT sets.id, sets.code, sets.owner, sets.owner_note, sets.step, sets.held_because, sets.use_by, sets.place_id,
      sets.withdrawn_at IS NOT NULL AS withdrawn, places.name AS place, sets.version_id,
      configurations.code AS configuration_code, configurations.name AS configuration,
      (SELECT lenders.name FROM loan_trays tray JOIN loans ON loans.id = tray.loan_id
        JOIN lenders ON lenders.id = loans.lender_id WHERE tray.set_id = sets.id) AS lender
    FROM sets JOIN configuration_versions version ON version.id = sets.version_id
    JOIN configurations ON configurations.id = version.configuration_id LEFT JOIN places ON places.id = sets.place_id
    WHERE ${every(
      among(sql`sets.id`, asked.ids),
      following(sql`sets.id`, asked.after),
      among(sql`sets.code`, asked.codes),
      among(sql`(sets.withdrawn_at IS NOT NULL)`, asked.withdrawn),
    )}
    ORDER BY sets.id LIMIT ${asked.limit + 1}`);
  return pageOf(rows.map(factsOf), asked.limit);
}

const factsOf = (row: Row): SetFacts => ({
  id: row.id,
  code: row.code,
  owner: row.owner,
  lender: row.lender ?? row.owner_note,
  step: turnStep.parse(row.step),
  heldBecause: row.held_because,
  withdrawn: row.withdrawn === 1,
  useBy: row.use_by,
  place: row.place_id === null ? null : { id: row.place_id, name: row.place ?? row.place_id },
  configuration: { code: row.configuration_code, name: row.configuration, versionId: row.version_id },
});
