'use client';

import { RadioGroup } from '@/app/_ui/radio-group';
import type { ItemId } from '@/lib/identity/ids';
import type { PlanCatalogue } from '@/lib/plans/planCatalogue';

/** The wires there are, by name. */
export function WireList({
  catalogue,
  value,
  onValue,
}: {
  catalogue: PlanCatalogue;
  value: string | null;
  onValue: (wireItemId: ItemId) => void;
}) {
  const wires = [...catalogue.items.values()]
    .filter((item) => item.kind === 'guideWire' && (item.status === 'current' || item.id === value))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
  return (
    <RadioGroup
      name="wire"
      label="Wire, by name"
      choices={wires.map(({ id, name, code, status }) => ({
        value: id,
        label: name,
        note: status === 'current' ? code : `${code}, ${status}`,
      }))}
      value={value as ItemId | null}
      onValue={onValue}
    />
  );
}
