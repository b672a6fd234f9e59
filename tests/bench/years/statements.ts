import type Sqlite from 'better-sqlite3';
import type { rowFromItem } from '@/db/mappers/item';

export type Statements = ReturnType<typeof statements>;

/** What is written, one prepared statement a table; columns that are always the same are part of it. */
export function statements(db: Sqlite.Database) {
  const into = (table: string, columns: string, fixed: Record<string, string> = {}) => {
    const names = columns.split(' ');
    const all = [...names, ...Object.keys(fixed)];
    const values = [...names.map(() => '?'), ...Object.values(fixed)];
    return db.prepare(`INSERT INTO ${table} (${all.join(', ')}) VALUES (${values.join(', ')})`);
  };
  const itemColumns =
    'id code kind name nickname maker_id side material supplied_sterile use reprocessing_limit mass_grams unit_cost_pence pack_multiple gtin parts_per_piece status detail search_text revision';
  const putItem = into('items', itemColumns);
  return {
    maker: into('makers', 'id name'),
    person: into('people', 'id name role'),
    place: into('places', 'id name metres'),
    theatre: into('theatres', 'id name'),
    steriliser: into('sterilisers', 'id name programmes'),
    item: (row: ReturnType<typeof rowFromItem>) =>
      putItem.run(
        row.id,
        row.code,
        row.kind,
        row.name,
        row.nickname ?? null,
        row.makerId,
        row.side ?? null,
        row.material ?? null,
        row.suppliedSterile === null || row.suppliedSterile === undefined
          ? null
          : Number(row.suppliedSterile),
        row.use,
        row.reprocessingLimit ?? null,
        row.massGrams ?? null,
        row.unitCostPence ?? null,
        row.packMultiple,
        null,
        row.partsPerPiece,
        row.status,
        JSON.stringify(row.detail),
        row.searchText,
        1,
      ),
    configuration: into('configurations', 'id code name'),
    version: into(
      'configuration_versions',
      'id configuration_id version status layers promises in_force_from revision',
    ),
    line: into(
      'configuration_lines',
      'id version_id item_id layer row slot expected minimum must_have_class substitutes',
    ),
    set: into('sets', 'id code version_id step_since place_id', {
      owner: "'ours'",
      step: "'inSterileStore'",
      revision: '1',
    }),
    content: into('set_contents', 'set_id line_id found', { unsound: '0', condition: "'sound'" }),
    case: into('cases', 'id reference theatre_id case_date starts_at ends_at surgeon_id', {
      region: "'tibiaShaft'",
      limb: "'left'",
      urgency: "'booked'",
      revision: '1',
    }),
    turn: into('turns', 'id set_id number began_at'),
    step: into('turn_steps', 'set_id turn_id from_step step person_id done_at entered_at'),
    pack: into('packs', 'id number set_id turn_id version_id packed_by packed_at load_id use_by', {
      kind: "'set'",
      barrier: "'wrap'",
      contents: "'[]'",
      state: "'opened'",
      revision: '1',
    }),
    load: into(
      'loads',
      'id number steriliser_id made_up_by made_up_at started_by started_at ended_by ended_at decided_by decided_at',
      { programme: "'134 °C wrapped'", state: "'accepted'", revision: '1' },
    ),
    loadPack: into('load_packs', 'load_id pack_id put_in_by put_in_at unloaded_by unloaded_at', {
      unloaded_as: "'sound'",
    }),
    pick: into('case_picks', 'id case_id set_id pack_id picked_by done_at entered_at issued_by issued_at', {
      quantity: '1',
      how: "'sent'",
    }),
    return: into('case_returns', 'id pick_id person_id done_at entered_at', {
      outcome: "'cameBack'",
      quantity: '1',
    }),
    heap: into('stock', 'id item_id lot', {
      form: "'unsterile'",
      quantity: '0',
      owner: "'ours'",
      place_id: "'place_store'",
      revision: '1',
    }),
    move: into(
      'piece_moves',
      'act item_id lot use_by quantity from_stock_id from_set_id from_line_id to_stock_id to_set_id to_line_id case_id pack_id unit_pence person_id done_on done_at entered_at',
      { owner: "'ours'" },
    ),
    opening: into('piece_moves', 'item_id quantity to_set_id to_line_id done_on done_at entered_at', {
      act: "'opening'",
      owner: "'ours'",
    }),
    ledger: into(
      'ledger',
      'seq form done_at entered_at person_id action subject_kind subject_id detail previous_hash hash',
    ),
  };
}
