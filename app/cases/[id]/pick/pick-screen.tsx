'use client';

import kitStyles from '@/app/_kit/kit.module.css';
import { RefusedEntries } from '@/app/_kit/refused-entries';
import { SavedLine } from '@/app/_kit/saved-line';
import { EmptyState } from '@/app/_ui/empty-state';
import { Section } from '@/app/_ui/section';
import type { KitScreen } from '@/db/queries/caseLife/kitScreen';
import { momentWords } from '@/lib/wording/sets';
import { FinishBar } from './finish-bar';
import { KitBanners } from './kit-banners';
import { NextThing } from './next-thing';
import { LineRow, PutBackRow } from './thing-rows';
import { usePicks } from './use-picks';

/**
 * The picking of a kit: the next thing to fetch, large; what is left; what lies with the kit; what goes back. Each press
 * or scan is kept in this browser until it is saved, and is refused in full where the thing may not go to the case.
 */
export function PickScreen({
  booked,
  kit,
  mayPick,
  mayIssue,
  now,
}: {
  booked: { id: string; reference: string };
  kit: KitScreen;
  mayPick: boolean;
  mayIssue: boolean;
  now: string;
}) {
  const fetching = mayPick && mayIssue && (kit.stage === 'issued' || kit.stage === 'inTheatre');
  const picks = usePicks(booked, kit, { mayPick, fetching });
  const { left, there, next } = picks;
  const picking = kit.stage === 'picking' && !kit.hidden;
  return (
    <div className={kitStyles.screen}>
      <KitBanners booked={booked} kit={kit} mayPick={mayPick} />
      <RefusedEntries
        refused={picks.outbox.refused.map(({ item, sentence }) => ({ id: item.id, sentence }))}
        word="Not taken"
        onRead={picks.dismiss}
      />
      {kit.toPutBack.length > 0 ? (
        <Section
          title={kit.stage === 'toPutBack' ? 'Put back' : 'No longer needed'}
          note="each goes back to the place it came from"
        >
          <ul className={kitStyles.list} aria-label="To put back">
            {kit.toPutBack.map((thing) => (
              <PutBackRow
                key={thing.pickId}
                thing={thing}
                pending={picks.goingBack.has(thing.pickId)}
                onPutBack={mayPick ? () => picks.putBack(thing.pickId) : null}
              />
            ))}
          </ul>
        </Section>
      ) : null}
      {picking && next && mayPick ? (
        <NextThing
          line={next}
          count={{ left: left.length, of: kit.lines.length }}
          onHave={picks.have}
          now={now}
        />
      ) : null}
      {(picking || kit.stage === 'notBegun') && mayPick ? (
        <p role="status" className={kitStyles.said}>
          {picks.said}
        </p>
      ) : null}
      {kit.lines.length > 0 && left.length > 0 && !kit.hidden ? (
        <Section title="Still to fetch" note={`${left.length} of ${kit.lines.length}, nearest first`}>
          <ul className={kitStyles.list} aria-label="Still to fetch">
            {left.map((line) => (
              <LineRow
                key={line.key}
                line={line}
                pending={picks.pendingKeys.has(line.key)}
                now={now}
                onHave={picking && mayPick ? () => picks.have(line) : null}
              />
            ))}
          </ul>
        </Section>
      ) : null}
      {there.length > 0 ? (
        <Section title="With the kit" note={`${there.length} of ${kit.lines.length}`}>
          <ul className={kitStyles.list} aria-label="With the kit">
            {there.map((line) => (
              <LineRow
                key={line.key}
                line={line}
                pending={picks.pendingKeys.has(line.key)}
                now={now}
                onPutBack={
                  mayPick && ['picking', 'picked', 'checked'].includes(kit.stage) ? picks.putBack : undefined
                }
              />
            ))}
          </ul>
        </Section>
      ) : null}
      {fetching || kit.fetchedLater.length > 0 ? (
        <Section title="Asked for later" note="it leaves the store as it is scanned">
          {fetching ? (
            <p>
              Scan what theatre asks for beyond its list. What is held, past use-by on the day or not sterile
              is refused as ever.
            </p>
          ) : null}
          {kit.fetchedLater.length > 0 ? (
            <ul className={kitStyles.list} aria-label="Asked for later">
              {kit.fetchedLater.map((thing) => (
                <li key={thing.pickId} className={kitStyles.row}>
                  <p className={kitStyles.name}>
                    {thing.quantity > 1 ? `${thing.quantity} × ${thing.name}` : thing.name}
                  </p>
                  <p>{`${momentWords(thing.at, now)}, ${thing.by}`}</p>
                </li>
              ))}
            </ul>
          ) : null}
        </Section>
      ) : null}
      {picking && kit.lines.length === 0 ? (
        <EmptyState title="Nothing in store serves this plan">
          There is nothing to fetch. The kit says what is short, and where the next one is.
        </EmptyState>
      ) : null}
      {mayPick && (picking || fetching || picks.outbox.pending.length > 0) ? (
        <SavedLine outbox={picks.outbox} />
      ) : null}
      {kit.listMadeAt !== null && !kit.hidden ? (
        <p className={kitStyles.soft}>
          {`The list follows version ${kit.planVersion} of the plan, worked out ${momentWords(kit.listMadeAt, now)}${kit.listMadeBy ? ` by ${kit.listMadeBy}` : ''}.`}
        </p>
      ) : null}
      <FinishBar
        booked={booked}
        kit={kit}
        left={left}
        pending={picks.outbox.pending.length}
        mayPick={mayPick}
      />
    </div>
  );
}
