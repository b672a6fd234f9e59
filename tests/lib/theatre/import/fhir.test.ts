import { describe, expect, it } from 'vitest';
import { type ListFileRead, readListFile } from '@/lib/theatre/import/readList';
import { understoodWords } from '@/lib/wording/list-import';
import { fhirBundle, PATIENT_WORDS } from '../../../fixtures/fhirList';

const ASKED = {
  start: '2026-06-10T08:30:00+01:00',
  end: '2026-06-10T10:00:00+01:00',
  theatre: 'Theatre 1',
  surgeon: { given: ['Tobias'], family: 'Wray' },
};

const read = (bundle: unknown): Promise<ListFileRead> =>
  readListFile(new TextEncoder().encode(JSON.stringify(bundle)), { sheet: null, columns: {} });
async function listOf(bundle: unknown) {
  const answer = await read(bundle);
  if (!answer.ok) throw new Error(answer.fault.code);
  return answer.list;
}
const bundleOf = (...resources: object[]) => ({
  resourceType: 'Bundle',
  type: 'collection',
  entry: resources.map((resource) => ({ resource })),
});
const REQUEST = {
  resourceType: 'ServiceRequest',
  id: 'r1',
  status: 'active',
  intent: 'order',
  bodySite: [{ text: 'Right ankle' }],
  occurrencePeriod: { start: '2026-06-10T08:30:00Z', end: '2026-06-10T10:00:00Z' },
};

/** Elements and codes: hl7.org/fhir/R4 and /R5, appointment.html, servicerequest.html, bodystructure.html. */
describe('a FHIR bundle', () => {
  it.each(['R4', 'R5'] as const)(
    'of %s says theatre, times, site, side, surgeon and urgency',
    async (version) => {
      const list = await listOf(fhirBundle({ ...ASKED, version }));
      expect(list.rows).toHaveLength(1);
      const [row] = list.rows;
      expect(row?.row).toBe(version === 'R4' ? 5 : 6);
      expect(
        Object.fromEntries(Object.entries(row?.cells ?? {}).map(([k, cell]) => [k, cell?.value])),
      ).toEqual({
        theatre: 'Theatre 1',
        surgeon: 'Tobias Wray',
        start: ASKED.start,
        end: ASKED.end,
        region: 'Distal radius',
        side: 'Left',
        urgency: 'soon',
        rowId: '9b2d6c1e-33a1-4d0e-9a53-0d5b8a6c7e11',
      });
    },
  );

  it.each(['R4', 'R5'] as const)(
    'of %s is read without a word about its patient, and says that it carries one',
    async (version) => {
      const bundle = fhirBundle({ ...ASKED, version });
      // the words are there to be found
      for (const word of PATIENT_WORDS) expect(JSON.stringify(bundle)).toContain(word);
      const list = await listOf(bundle);
      const all = JSON.stringify([list, understoodWords(list)]);
      for (const word of PATIENT_WORDS) expect(all).not.toContain(word);
      expect(understoodWords(list).join(' ')).toContain(
        'carries one Patient resource. Nothing of them was read or kept',
      );
    },
  );

  it('takes no patient for a surgeon or a place, however the reference is written', async () => {
    const display = 'Penelope Quillfeather';
    for (const actor of [
      { display },
      { reference: 'Patient/p1', display },
      { reference: 'https://list.example/fhir/Patient/p1/_history/2', display },
      { reference: 'urn:uuid:1', display },
      { reference: 'Practitioner/p1', type: 'Patient', display },
    ]) {
      const list = await listOf(
        bundleOf({ resourceType: 'Appointment', id: 'a', status: 'booked', participant: [{ actor }] }),
      );
      expect(JSON.stringify(list)).not.toContain(display);
    }
    const named = await listOf(
      bundleOf({
        resourceType: 'Appointment',
        status: 'booked',
        participant: [
          { actor: { reference: 'Practitioner/s9', display: 'Ines Halloran' } },
          { actor: { type: 'Location', display: 'Theatre 2' } },
        ],
      }),
    );
    expect(named.rows[0]?.cells).toMatchObject({
      surgeon: { value: 'Ines Halloran' },
      theatre: { value: 'Theatre 2' },
    });
  });

  it('names the primary performer, and says where several are named and none is', async () => {
    const practitioner = (id: string, family: string) => ({
      resourceType: 'Practitioner',
      id,
      name: [{ given: ['A'], family }],
    });
    const actor = (id: string, code?: string) => ({
      actor: { reference: `Practitioner/${id}` },
      ...(code ? { type: [{ coding: [{ code }] }] } : {}),
    });
    const people = [practitioner('1', 'One'), practitioner('2', 'Two')];
    const appointment = (...participant: object[]) => ({
      resourceType: 'Appointment',
      status: 'booked',
      participant,
    });
    const primary = await listOf(bundleOf(...people, appointment(actor('1'), actor('2', 'PPRF'))));
    expect(primary.rows[0]?.cells.surgeon).toEqual({
      value: 'A Two',
      column: 'Appointment.participant (Practitioner)',
    });
    const both = await listOf(bundleOf(...people, appointment(actor('1'), actor('2'))));
    expect(both.rows[0]?.cells.surgeon).toMatchObject({ several: true });
  });

  it('takes requests that no appointment is based on, with the places of R4 and R5', async () => {
    for (const where of [
      { locationReference: [{ reference: 'Location/t' }] },
      { location: [{ reference: { reference: 'Location/t' } }] },
    ]) {
      const list = await listOf(
        bundleOf({ resourceType: 'Location', id: 't', name: 'Theatre 2' }, { ...REQUEST, ...where }),
      );
      expect(list.rows).toHaveLength(1);
      expect(list.rows[0]?.cells).toMatchObject({
        theatre: { value: 'Theatre 2' },
        start: { value: '2026-06-10T08:30:00Z' },
        region: { value: 'Ankle' },
        side: { value: 'Right' },
      });
    }
  });

  it.each([
    [[{ text: 'Ankle' }, { text: 'Left' }], 'Ankle', 'Left'],
    [[{ text: 'Left ankle and right ankle' }], 'Ankle', 'Both'],
    [[{ text: 'Shoulder' }], 'Shoulder', undefined],
    [[{ coding: [{ code: '24028007' }] }], undefined, 'Right'],
    [[{ text: 'Ankle', coding: [{ code: '51440002' }] }], 'Ankle', 'Both'],
    [[{ coding: [{ code: '344001' }] }], undefined, undefined],
  ])('reads the site %o as %s, %s', async (bodySite, region, side) => {
    const list = await listOf(bundleOf({ ...REQUEST, bodySite }));
    expect(list.rows[0]?.cells.region?.value).toBe(region);
    expect(list.rows[0]?.cells.side?.value).toBe(side);
  });

  it('leaves out what is called off or not settled there, and says so', async () => {
    const appointment = (status: string) => ({ resourceType: 'Appointment', status });
    const list = await listOf(
      bundleOf(
        ...['cancelled', 'noshow', 'entered-in-error', 'proposed', 'pending', 'waitlist', 'booked'].map(
          appointment,
        ),
        { ...REQUEST, status: 'revoked' },
        { ...REQUEST, id: 'r2', intent: 'proposal' },
      ),
    );
    expect(list.rows.map(({ row }) => row)).toEqual([7]);
    expect(understoodWords(list).filter((line) => line.includes('called off'))).toHaveLength(4);
    expect(understoodWords(list).filter((line) => line.includes('not settled'))).toHaveLength(4);
  });

  it('keeps an identifier only where it has the shape of a case reference of ours', async () => {
    const list = await listOf(
      bundleOf({
        resourceType: 'Appointment',
        status: 'booked',
        identifier: [{ value: 'P7654321' }, { value: 'LM-26-7K2P' }],
      }),
    );
    expect(list.rows[0]?.cells.caseReference?.value).toBe('LM-26-7K2P');
    expect(JSON.stringify(list)).not.toContain('P7654321');
  });

  it('is refused where it is no JSON, no bundle, or has no case in it', async () => {
    const text = new TextEncoder().encode('{"resourceType": "Bundle",');
    expect(await readListFile(text, { sheet: null, columns: {} })).toMatchObject({
      fault: { code: 'not-json' },
    });
    expect(await read({ resourceType: 'Patient' })).toMatchObject({ fault: { code: 'not-a-bundle' } });
    expect(await read([])).toMatchObject({ fault: { code: 'not-a-bundle' } });
    expect(await read(bundleOf({ resourceType: 'Patient', id: 'p' }))).toMatchObject({
      fault: { code: 'no-rows' },
    });
  });
});
