import { Figure, FigureRow } from '@/app/_ui/figure';
import { LinkButton } from '@/app/_ui/link-button';
import { Section } from '@/app/_ui/section';
import { loadWholeStanding } from '@/db/queries/configurationStanding';
import type { ConfigurationReview } from '@/db/queries/review/configurationReview';
import type { Reading } from '@/db/reader';
import { writeGrams } from '@/lib/quantities/mass';
import { writePence } from '@/lib/quantities/money';
import type { ConfigurationVersion } from '@/lib/sets/configuration';
import { ShortList } from './short-list';

/** What the open draft would mean: mass, cost of keeping, and what it would have lacked in past cases. Plans are tried on its own page. */
export async function DraftEffect({
  access,
  review,
}: {
  access: Reading;
  review: ConfigurationReview & { draft: ConfigurationVersion };
}) {
  const { configuration, inForce, draft, cases, costs, short, names } = review;
  const [now, then] = await Promise.all([
    loadWholeStanding(access, inForce),
    loadWholeStanding(access, draft),
  ]);
  const mass = ({ standing }: typeof now) => {
    const { foundGrams, exact } = standing.figures.mass;
    return exact ? writeGrams(foundGrams) : `≥ ${writeGrams(foundGrams)}`;
  };
  const pieces = ({ lines }: ConfigurationVersion) => lines.reduce((all, { expected }) => all + expected, 0);
  const keep = (version: ConfigurationVersion) =>
    costs.keepPencePerPiece === null ? null : writePence(pieces(version) * costs.keepPencePerPiece);
  const would = short.draft ?? { all: [], new: [] };
  return (
    <Section
      title={`If version ${draft.version}, in draft, had been in force`}
      actions={
        <LinkButton href={`/configurations/${configuration.id}/approve`} kind="primary">
          Try it on every saved plan
        </LinkButton>
      }
    >
      <FigureRow>
        <Figure
          size="medium"
          label="Would have run short in"
          value={would.all.length}
          note={`of ${cases.length} cases; ${would.new.length} of them for something it lacks that version ${inForce.version} holds`}
        />
        <Figure size="medium" label="Pieces" value={pieces(draft)} note={`${pieces(inForce)} now`} />
        <Figure size="medium" label="Mass when whole" value={mass(then)} note={`${mass(now)} now`} />
        <Figure
          size="medium"
          label="Keeping its pieces, a turn"
          value={keep(draft)}
          note={keep(inForce) === null ? 'the cost is not stated' : `${keep(inForce)} now`}
        />
      </FigureRow>
      <ShortList
        summary={`The ${would.new.length} cases it would newly have run short in`}
        cases={would.new}
        names={names}
      />
    </Section>
  );
}
