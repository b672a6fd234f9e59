import { definitionsPage } from '@/db/queries/fhir/definitions';
import { deliveriesPage } from '@/db/queries/fhir/deliveries';
import { heapsPage } from '@/db/queries/fhir/heaps';
import { type Report, reportsPage } from '@/db/queries/fhir/reports';
import { requestsPage } from '@/db/queries/fhir/requests';
import { setsPage } from '@/db/queries/fhir/sets';
import { type PieceKey, usedPiecesPage } from '@/db/queries/fhir/usedPieces';
import type { Reading } from '@/db/reader';
import type { Resource } from '@/lib/fhir/datatypes';
import { setDevice } from '@/lib/fhir/device';
import { configurationDefinition, itemDefinition } from '@/lib/fhir/deviceDefinition';
import { deviceUsage } from '@/lib/fhir/deviceUsage';
import { type Frame, ownSystem } from '@/lib/fhir/frame';
import { GTIN_SYSTEM } from '@/lib/fhir/identifiers';
import { fhirId, ownId } from '@/lib/fhir/ids';
import { heapInventoryItem } from '@/lib/fhir/inventoryItem';
import {
  holdingReport,
  type InventoryReport,
  shelfReport,
  stockCountReport,
} from '@/lib/fhir/inventoryReport';
import type { OfferedType } from '@/lib/fhir/offered';
import { codesIn, type Search } from '@/lib/fhir/search';
import { supplyDelivery } from '@/lib/fhir/supplyDelivery';
import { supplyRequest } from '@/lib/fhir/supplyRequest';

/** A page of one type. `next`: the id the following page begins after; `null`: this is the last. */
export interface ResourcePage {
  resources: Resource[];
  next: string | null;
}

type Pages = (db: Reading, frame: Frame, search: Search) => Promise<ResourcePage>;

/** Of each type how its pages are read and written: the one place where queries and mappings meet. */
export const PAGES: Record<OfferedType, Pages> = {
  Device: async (db, frame, search) => {
    const { tokens } = search;
    const statuses = codesIn(tokens.status, 'http://hl7.org/fhir/device-status');
    const { rows, more } = await setsPage(db, {
      ...paging(search),
      codes: codesIn(tokens.identifier, ownSystem(frame, 'set-code')),
      withdrawn: statuses && [
        ...(statuses.includes('active') ? [0] : []),
        ...(statuses.includes('inactive') ? [1] : []),
      ],
    });
    return page(
      rows.map((row) => setDevice(frame, row)),
      more,
    );
  },
  DeviceDefinition: async (db, frame, search) => {
    const { identifier } = search.tokens;
    const by = identifier && {
      codes: codesIn(identifier, ownSystem(frame, 'item-code')) ?? [],
      gtins: codesIn(identifier, GTIN_SYSTEM) ?? [],
      versions: codesIn(identifier, ownSystem(frame, 'configuration-version')) ?? [],
    };
    const { rows, more } = await definitionsPage(db, { ...paging(search), by: by ?? null });
    return page(
      rows.map((row) =>
        row.kind === 'item' ? itemDefinition(frame, row) : configurationDefinition(frame, row),
      ),
      more,
    );
  },
  DeviceUsage: async (db, frame, search) => {
    const { tokens, strings, dates } = search;
    const { rows, more } = await usedPiecesPage(db, {
      keys: tokens._id?.flatMap(({ code }) => pieceKey(code) ?? []) ?? null,
      after: search.after === null ? null : pieceKey(search.after),
      limit: search.count,
      item: itemAsked(frame, search, 'device'),
      lots: strings.lot ?? null,
      cases: codesIn(tokens.case, ownSystem(frame, 'case-reference')),
      statuses: codesIn(tokens.status, 'http://hl7.org/fhir/deviceusage-status'),
      used: dates.date ?? [],
    });
    return page(
      rows.map((row) => deviceUsage(frame, row)),
      more,
    );
  },
  InventoryItem: async (db, frame, search) => {
    const { tokens, strings } = search;
    const named = codesIn(tokens.identifier, ownSystem(frame, 'stock'));
    const asked = paging(search);
    const { rows, more } = await heapsPage(db, {
      ...asked,
      ids: named && asked.ids ? named.filter((id) => asked.ids?.includes(id)) : (named ?? asked.ids),
      item: itemAsked(frame, search, 'code'),
      lots: strings.lot ?? null,
      statuses: codesIn(tokens.status, 'http://hl7.org/fhir/inventoryitem-status'),
    });
    return page(
      rows.map((row) => heapInventoryItem(frame, row)),
      more,
    );
  },
  InventoryReport: async (db, frame, search) => {
    const statuses = codesIn(search.tokens.status, 'http://hl7.org/fhir/inventoryreport-status');
    const { rows, more } = await reportsPage(db, paging(search));
    const last = rows.at(-1);
    return {
      // whether a report is a draft is known once its figures are: a page may so hold fewer than it was asked for
      resources: rows
        .map((row) => reportOf(frame, row))
        .filter(({ status }) => statuses === null || statuses.includes(status)),
      next: more && last ? fhirId(last.id) : null,
    };
  },
  SupplyDelivery: async (db, frame, search) => {
    const { tokens, strings, dates } = search;
    const statuses = codesIn(tokens.status, 'http://hl7.org/fhir/supplydelivery-status');
    if (statuses && !statuses.includes('completed')) return { resources: [], next: null };
    const { rows, more } = await deliveriesPage(db, {
      ...paging(search),
      lots: strings.lot ?? null,
      changed: dates._lastUpdated ?? [],
    });
    return page(
      rows.map((row) => supplyDelivery(frame, row)),
      more,
    );
  },
  SupplyRequest: async (db, frame, search) => {
    const { tokens, dates } = search;
    const { rows, more } = await requestsPage(db, {
      ...paging(search),
      statuses: codesIn(tokens.status, 'http://hl7.org/fhir/supplyrequest-status'),
      orders: codesIn(tokens.order, ownSystem(frame, 'order-number')),
      proposed: dates.date ?? [],
      changed: dates._lastUpdated ?? [],
    });
    return page(
      rows.map((row) => supplyRequest(frame, row)),
      more,
    );
  },
};

/** Whether an id that is said to end a page can be one of the type’s. */
export const isNextOf = (type: OfferedType, after: string): boolean =>
  (type === 'DeviceUsage' ? pieceKey(after) : ownId(after)) !== null;

const page = (resources: Resource[], more: boolean): ResourcePage => ({
  resources,
  next: more ? (resources.at(-1)?.id ?? null) : null,
});

const paging = ({ tokens, after, count }: Search) => ({
  ids: tokens._id?.flatMap(({ code }) => ownId(code) ?? []) ?? null,
  after: after === null ? null : ownId(after),
  limit: count,
});

const itemAsked = (frame: Frame, { tokens }: Search, name: 'code' | 'device') => ({
  codes: codesIn(tokens[name], ownSystem(frame, 'item-code')),
  gtins: codesIn(tokens[name], GTIN_SYSTEM),
});

/** `move.123.2` */
function pieceKey(id: string): PieceKey | null {
  const [, seq, nth] = /^move\.([1-9]\d{0,14})\.([1-9]\d{0,5})$/.exec(id) ?? [];
  return seq === undefined ? null : { seq: Number(seq), nth: Number(nth) };
}

function reportOf(frame: Frame, report: Report): InventoryReport {
  switch (report.kind) {
    case 'shelf':
      return shelfReport(frame, report.facts);
    case 'holding':
      return holdingReport(frame, report.facts);
    case 'stockCount':
      return stockCountReport(frame, report.facts);
  }
}
