'use client';

import { EmptyState } from '@/app/_ui/empty-state';
import { FilterBar } from '@/app/_ui/filter-bar';
import { LinkButton } from '@/app/_ui/link-button';
import { Section } from '@/app/_ui/section';
import { SelectField } from '@/app/_ui/select-field';
import { useUrlParam } from '@/app/_ui/url-state';
import { useBuildsToday } from './_parts/use-builds-today';
import { type CardLine, CardsTable } from './cards-table';
import { type StartLine, StartsTable } from './starts-table';

/** Cards and saved starts under one filter: whose, and whether the retired ones are shown. */
export function PlanLists({
  cards,
  starts,
  mayMakeCard,
}: {
  cards: readonly CardLine[];
  starts: readonly StartLine[];
  mayMakeCard: boolean;
}) {
  const [whose, setWhose] = useUrlParam('whose');
  const [which, setWhich] = useUrlParam('which');
  const shows = (owner: string, retired: boolean) =>
    (whose === '' || owner === whose) && (which === 'all' || retired === (which === 'retired'));
  const shownCards = cards.filter((card) => shows(card.surgeon, card.retired));
  const shownStarts = starts.filter((start) => shows(start.owner, start.retired));
  const today = useBuildsToday([
    ...shownStarts.map(({ id }) => id),
    ...shownCards.flatMap((card) => card.starts.map(({ id }) => id)),
  ]);
  const owners = [
    ...new Set([...cards.map(({ surgeon }) => surgeon), ...starts.map(({ owner }) => owner)]),
  ].sort();
  return (
    <>
      <FilterBar
        label="Filter cards and starts"
        summary={`${shownCards.length} of ${cards.length} cards, ${shownStarts.length} of ${starts.length} starts`}
      >
        <SelectField
          name="whose"
          label="Whose"
          blank="Anybody’s"
          options={owners.map((name) => ({ value: name, label: name }))}
          value={whose}
          onValue={setWhose}
        />
        <SelectField
          name="which"
          label="Which"
          blank="In use"
          options={[
            { value: 'retired', label: 'Retired' },
            { value: 'all', label: 'All of them' },
          ]}
          value={which}
          onValue={setWhich}
        />
      </FilterBar>
      <Section
        title="Preference cards"
        note={String(shownCards.length)}
        actions={
          mayMakeCard ? (
            <LinkButton href="/plans/cards/new" kind="primary">
              Make a card
            </LinkButton>
          ) : null
        }
      >
        {shownCards.length === 0 ? (
          <EmptyState title="No preference card here">
            A card says what a surgeon wants for a procedure: saved starts to choose from, and what should be
            at hand beside the plan.
          </EmptyState>
        ) : (
          <CardsTable lines={shownCards} today={today} />
        )}
      </Section>
      <Section title="Saved starts" note={String(shownStarts.length)}>
        {shownStarts.length === 0 ? (
          <EmptyState
            title="No saved start here"
            action={<LinkButton href="/cases">To the cases</LinkButton>}
          >
            In a plan, “Save as a start” keeps one.
          </EmptyState>
        ) : (
          <StartsTable lines={shownStarts} today={today} />
        )}
      </Section>
    </>
  );
}
