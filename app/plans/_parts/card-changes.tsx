import { ChangeRows } from '@/app/cases/change-rows';
import type { CardBody } from '@/lib/plans/card';
import { compareCards } from '@/lib/plans/compareCards';
import { cardChangeWords } from '@/lib/wording/cards';

interface Version {
  version: number;
  body: CardBody;
}

/** What differs between two versions of a preference card. */
export function CardChanges({
  before,
  after,
  names,
}: {
  before: Version;
  after: Version;
  names: Parameters<typeof cardChangeWords>[1];
}) {
  const changes = compareCards(before.body, after.body);
  if (changes.length === 0) return <p>Nothing differs: the two ask for the same.</p>;
  return (
    <ChangeRows
      rows={changes.map((change) => cardChangeWords(change, names))}
      heads={[`Version ${before.version}`, `Version ${after.version}`]}
      caption={`Changes from version ${before.version} to version ${after.version}`}
      absent="not on the card"
    />
  );
}
