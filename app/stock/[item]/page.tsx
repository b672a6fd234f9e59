import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { enter } from '@/app/_server/enter';
import { ButtonRow } from '@/app/_ui/button-row';
import { Disclosure } from '@/app/_ui/disclosure';
import { EmptyState } from '@/app/_ui/empty-state';
import { LinkButton } from '@/app/_ui/link-button';
import { Page } from '@/app/_ui/page';
import { Section } from '@/app/_ui/section';
import { Status } from '@/app/_ui/status';
import { findItem } from '@/db/queries/catalogueItem';
import { listPlaces } from '@/db/queries/places';
import { listReasons } from '@/db/queries/reasons/reasons';
import { readSetting } from '@/db/queries/settings';
import { lookAlikesOnShelf } from '@/db/queries/shelf/lookAlikesOnShelf';
import { shelfLots } from '@/db/queries/shelf/shelfLots';
import { shelfMoves } from '@/db/queries/shelf/shelfMoves';
import { may } from '@/lib/people/permissions';
import { offered } from '@/lib/reasons/reason';
import { wallClock } from '@/lib/theatre/localTime';
import { momentWords } from '@/lib/wording/sets';
import { moveWords } from '@/lib/wording/shelf';
import { Heaps } from './heaps';
import { LookAlikes } from './look-alikes';
import { MoveTable } from './move-table';

export const dynamic = 'force-dynamic';

type Props = { params: Promise<{ item: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { db } = await enter('/stock/[item]');
  const found = await findItem(db, (await params).item);
  return { title: found ? `Stock of ${found.item.code}` : 'No such item' };
}

const MOVES_SHOWN = 100;

/** One item on the shelves: its heaps in the order of taking, what is easily taken for it, and what came and went. */
export default async function ShelfItemPage({ params }: Props) {
  const { db, person } = await enter('/stock/[item]');
  const { item: id } = await params;
  const at = now();
  const found = await findItem(db, id);
  if (!found) notFound();
  const { item } = found;
  const [heaps, empty, alike, moves, places, { soonDays }, reasons] = await Promise.all([
    shelfLots(db, at, { itemId: item.id }),
    shelfLots(db, at, { itemId: item.id, empty: true }),
    lookAlikesOnShelf(db, item),
    shelfMoves(db, item.id, MOVES_SHOWN),
    listPlaces(db),
    readSetting(db.read, 'stock'),
    listReasons(db),
  ]);
  const given = {
    today: wallClock(at).date,
    soonDays,
    places: places
      .filter(({ withdrawnAt }) => withdrawnAt === null)
      .map(({ id: value, name }) => ({ value, label: name })),
    reasons: offered(reasons, 'waste').map(({ id: reasonId, code, words }) => ({
      id: reasonId,
      code,
      words,
    })),
    mayMove: may(person, 'moveStock'),
    mayAdjust: may(person, 'adjustStock'),
    mayHold: may(person, 'holdStock'),
    mayLetGo: may(person, 'liftHold'),
  };
  return (
    <Page
      bench
      title={item.name}
      mark={
        item.status === 'current' ? item.code : <Status tone="stop">{`${item.code}, ${item.status}`}</Status>
      }
      lead="First expired, first out: the earliest use-by that is still good on the day of the case, and of the same use-by the nearest."
      breadcrumb={[{ label: 'Stock', href: '/stock' }]}
      actions={
        <ButtonRow>
          {may(person, 'receiveStock') ? (
            <LinkButton href={`/stock/receive?item=${item.id}`}>Receive</LinkButton>
          ) : null}
          <LinkButton href={`/catalogue/${item.id}`}>In the catalogue</LinkButton>
        </ButtonRow>
      }
    >
      <LookAlikes here={[...new Set(heaps.map(({ placeId }) => placeId))]} name={item.name} alike={alike} />
      <Section title="On the shelves" note="in the order of taking, for a case today">
        {heaps.length === 0 ? (
          <EmptyState title="None is on the shelves">What is received or shelved appears here.</EmptyState>
        ) : (
          <Heaps heaps={heaps} label={`Heaps of ${item.name}`} {...given} />
        )}
        {empty.length > 0 && given.mayAdjust ? (
          <Disclosure summary={`Heaps that are empty now: ${empty.length}`}>
            <Heaps heaps={empty.slice(0, 20)} label={`Empty heaps of ${item.name}`} {...given} />
          </Disclosure>
        ) : null}
      </Section>
      <Section title="What came and went" note={`the last ${MOVES_SHOWN} moves, newest first`}>
        <MoveTable
          rows={moves.map((move) => ({
            seq: move.seq,
            at: move.at,
            when: momentWords(move.at, at),
            what: moveWords(move.act, move.reason),
            sign: move.sign,
            quantity: move.quantity,
            lot: move.lot,
            from: move.from,
            to: move.to,
            caseId: move.caseId,
            of: move.reference ?? (move.delivery === null ? null : `delivery ${move.delivery}`),
            by: move.by,
          }))}
        />
      </Section>
    </Page>
  );
}
