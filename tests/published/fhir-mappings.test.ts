import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ITEM_KINDS } from '@/lib/catalogue/item';
import { searchset } from '@/lib/fhir/bundle';
import type { Resource } from '@/lib/fhir/datatypes';
import { setDevice } from '@/lib/fhir/device';
import { configurationDefinition, itemDefinition } from '@/lib/fhir/deviceDefinition';
import { deviceUsage } from '@/lib/fhir/deviceUsage';
import { heapInventoryItem } from '@/lib/fhir/inventoryItem';
import { holdingReport, shelfReport, stockCountReport } from '@/lib/fhir/inventoryReport';
import { operationOutcome } from '@/lib/fhir/operationOutcome';
import { supplyDelivery } from '@/lib/fhir/supplyDelivery';
import { supplyRequest } from '@/lib/fhir/supplyRequest';
import { turnStep } from '@/lib/sets/setState';
import { bitFor, plateFor, screwFor, sleeveFor } from '../fixtures/catalogueItems';
import { fitsSchema } from './fhir-r5/schema';
import { isUcum, quantitiesIn } from './fhir-r5/ucum';
import { faultsOf } from './fhir-r5/validate';

/** Whatever the facts, what is made of them is R5, by HL7’s own definitions (see fhir-validator.test.ts). */

const FRAME = {
  base: 'https://kitwright.example/api/v1/fhir',
  hospital: 'Larkmoor Infirmary',
  now: '2026-01-14T06:30:00.000Z',
};

// what people type: anything but nothing and blanks alone
const text = fc
  .oneof(
    fc.string({ minLength: 1, maxLength: 40 }),
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 20 }),
  )
  .map((one) => one.trim())
  .filter((one) => one !== '');
const code = fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9./-]{0,39}$/);
const idOf = (prefix: string) => fc.stringMatching(/^[0-9a-z-]{1,36}$/).map((rest) => `${prefix}_${rest}`);
const day = fc
  .date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));
const instant = fc
  .date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString());
const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: null });
const count = fc.integer({ min: 1, max: 99_999 });
const gtin = fc.stringMatching(/^\d{14}$/);
const item = fc.record({ id: idOf('item'), code, name: text, gtin: maybe(gtin) });
const place = fc.record({ id: idOf('place'), name: text });
const maker = fc.record({ id: idOf('maker'), name: text });

/** Made of any facts it passes both readings of R5, its units are UCUM’s, and it speaks of no patient. */
function isR5<T>(facts: fc.Arbitrary<T>, make: (facts: T) => Resource, numRuns = 25): void {
  fc.assert(
    fc.property(facts, (one) => {
      const resource = JSON.parse(JSON.stringify(make(one)));
      expect(faultsOf(resource)).toEqual([]);
      expect(fitsSchema(resource)).toBe(true);
      for (const { system, code: unit } of quantitiesIn(resource)) {
        expect(system).toBe('http://unitsofmeasure.org');
        expect(isUcum(unit ?? '')).toBe(true);
      }
      expect(resource.id).toMatch(/^[A-Za-z0-9.-]{1,64}$/);
    }),
    { numRuns },
  );
}

describe('made of whatever facts, it is R5:', () => {
  it('a set', () => {
    const facts = fc.record({
      id: idOf('set'),
      code: text,
      owner: fc.constantFrom('ours' as const, 'loan' as const),
      lender: maybe(text),
      step: fc.constantFrom(...turnStep.options),
      heldBecause: maybe(text),
      withdrawn: fc.boolean(),
      useBy: maybe(day),
      place: maybe(place),
      configuration: fc.record({ code, name: text, versionId: idOf('version') }),
    });
    isR5(facts, (one) => setDevice(FRAME, one));
  });

  // every kind there is: tests/db/fhir
  it('an item of the catalogue', () => {
    const made = [plateFor(), screwFor(), bitFor(), sleeveFor()];
    const facts = fc.record({
      item: fc.constantFrom(...made),
      maker,
      standing: fc.constantFrom('current' as const, 'withdrawn' as const, 'recalled' as const),
    });
    isR5(
      facts,
      ({ item: one, standing, ...rest }) =>
        itemDefinition(FRAME, { ...rest, item: { ...one, status: standing } }),
      60,
    );
  });

  it('a version of a configuration', () => {
    const facts = fc.record({
      id: idOf('version'),
      version: count,
      code,
      name: text,
      note: maybe(text),
      parts: fc.array(fc.record({ itemId: idOf('item'), count }), { maxLength: 5 }),
    });
    isR5(facts, (one) => configurationDefinition(FRAME, one));
  });

  it('a heap', () => {
    const facts = fc.record({
      id: idOf('stock'),
      item: fc.record({
        id: idOf('item'),
        code,
        name: text,
        gtin: maybe(gtin),
        kind: fc.constantFrom(...ITEM_KINDS),
      }),
      form: fc.constantFrom('pouch' as const, 'sterilePacked' as const, 'unsterile' as const),
      lot: maybe(text),
      useBy: maybe(day),
      quantity: maybe(fc.nat(99_999)),
      owner: fc.constantFrom('ours' as const, 'consignment' as const),
      place,
      heldBecause: maybe(text),
    });
    isR5(facts, (one) => heapInventoryItem(FRAME, one));
  });

  const figure = fc.oneof(fc.nat(9_999), fc.constantFrom('masked' as const, 'unknown' as const));

  it('the shelf of a place', () => {
    const heap = fc.record({ id: idOf('stock'), item, pieces: figure });
    isR5(fc.record({ place, heaps: fc.array(heap, { maxLength: 4 }) }), (one) => shelfReport(FRAME, one));
  });

  it('what a set holds', () => {
    const line = fc.record({ item, found: fc.nat(99), unsound: fc.nat(3) });
    const facts = fc.record({
      id: idOf('set'),
      code: text,
      place: maybe(place),
      countedAt: maybe(instant),
      lines: maybe(fc.array(line, { maxLength: 4 })),
    });
    isR5(facts, (one) => holdingReport(FRAME, one));
  });

  it('a count of the shelf', () => {
    const line = fc.record({ stockId: maybe(idOf('stock')), item, pieces: figure });
    const facts = fc.record({
      id: idOf('stockCount'),
      place,
      begunAt: instant,
      finished: maybe(fc.record({ at: instant, lines: fc.array(line, { maxLength: 4 }) })),
    });
    isR5(facts, (one) => stockCountReport(FRAME, one));
  });

  it('a request', () => {
    const order = fc.record({
      number: code,
      state: fc.constantFrom('open' as const, 'closed' as const),
      ordered: count,
      here: fc.nat(99),
      expectedOn: maybe(day),
    });
    const facts = fc.record({
      id: idOf('restockLine'),
      item,
      maker,
      proposal: fc.constantFrom(
        'proposed' as const,
        'approved' as const,
        'superseded' as const,
        'turnedDown' as const,
      ),
      proposed: fc.nat(999),
      approved: maybe(fc.nat(999)),
      proposedAt: instant,
      sentence: text,
      order: maybe(order),
      changedAt: instant,
    });
    isR5(facts, (one) => supplyRequest(FRAME, one));
  });

  it('a delivery', () => {
    const facts = fc.record({
      id: idOf('orderPart'),
      from: fc.constantFrom('order' as const, 'delivery' as const),
      restockLineId: maybe(idOf('restockLine')),
      supplier: fc.record({ id: maybe(idOf('maker')), name: text }),
      stockId: idOf('stock'),
      quantity: maybe(count),
      place,
      cameAt: fc.oneof(day, instant),
      enteredAt: instant,
    });
    isR5(facts, (one) => supplyDelivery(FRAME, one));
  });

  it('a piece used, and of its patient nothing but that none is kept', () => {
    const facts = fc.record({
      seq: fc.integer({ min: 1, max: 999_999_999 }),
      nth: fc.integer({ min: 1, max: 99 }),
      act: fc.constantFrom('implanted' as const, 'wasted' as const),
      reason: fc.constantFrom(null, 'openedNotImplanted', 'damaged', 'pastUseBy'),
      takenBack: fc.boolean(),
      item,
      lot: maybe(text),
      useBy: maybe(day),
      caseReference: text,
      doneAt: instant,
      changedAt: instant,
    });
    isR5(facts, (one) => deviceUsage(FRAME, one));
    fc.assert(
      fc.property(facts, (one) => {
        expect(deviceUsage(FRAME, one).patient).toEqual({
          type: 'Patient',
          extension: [
            { url: 'http://hl7.org/fhir/StructureDefinition/data-absent-reason', valueCode: 'unsupported' },
          ],
        });
      }),
    );
  });

  it('a page, with nothing on it too', () => {
    const shelf = (name: string) => shelfReport(FRAME, { place: { id: 'place_a', name }, heaps: [] });
    const links = fc.record({ self: fc.webUrl(), next: maybe(fc.webUrl()) });
    fc.assert(
      fc.property(fc.array(text, { maxLength: 3 }), links, (names, link) => {
        const bundle = JSON.parse(JSON.stringify(searchset(FRAME, names.slice(0, 1).map(shelf), link)));
        expect(faultsOf(bundle)).toEqual([]);
        expect(fitsSchema(bundle)).toBe(true);
      }),
      { numRuns: 25 },
    );
  });

  it('a refusal', () => {
    const problem = fc.record({ path: fc.array(text, { maxLength: 2 }), code, message: text });
    fc.assert(
      fc.property(fc.array(problem, { minLength: 1, maxLength: 4 }), (problems) => {
        const outcome = JSON.parse(JSON.stringify(operationOutcome(problems)));
        expect(faultsOf(outcome)).toEqual([]);
        expect(fitsSchema(outcome)).toBe(true);
      }),
      { numRuns: 25 },
    );
  });
});
