'use client';

import { SelectField, type SelectOption } from '@/app/_ui/select-field';
import { useUrlParam } from '@/app/_ui/url-state';

const LIVE = { server: true, delayMs: 0 };

/** Which table: the relation, kept in the address. */
export function RelationPicker({ relations }: { relations: SelectOption[] }) {
  const [relation, setRelation] = useUrlParam('relation', 'seats', LIVE);
  return (
    <SelectField name="relation" label="Table" options={relations} value={relation} onValue={setRelation} />
  );
}
