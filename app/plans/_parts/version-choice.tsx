import { Button } from '@/app/_ui/button';
import { FieldGrid } from '@/app/_ui/field-grid';
import { SelectField } from '@/app/_ui/select-field';

/** Which two versions are compared; they stand in the address, so that a comparison can be sent to somebody. */
export function VersionChoice({
  versions,
  from,
  to,
}: {
  versions: readonly { version: number; saved: string }[];
  from: number;
  to: number;
}) {
  const options = versions.map(({ version, saved }) => ({
    value: String(version),
    label: `Version ${version}, ${saved}`,
  }));
  return (
    <form method="get">
      <FieldGrid>
        <SelectField name="from" label="Before" options={options} defaultValue={String(from)} />
        <SelectField name="to" label="After" options={options} defaultValue={String(to)} />
      </FieldGrid>
      <p>
        <Button type="submit" kind="primary">
          Compare
        </Button>
      </p>
    </form>
  );
}
