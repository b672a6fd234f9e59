import { HOLE_FIELDS, type HoleField } from '../../catalogue/form/draft';
import { HOLE_CLASS_WORDS, PLAIN_SEAT_WORDS, SEGMENT_WORDS } from '../../wording/catalogue';
import type { ListColumn, ListInfo } from '../list';
import { column } from './column';

const mm = (key: string, heading: string, says: string, example = '') =>
  column(key, heading, 'decimal', `${says} Millimetres.`, { unit: 'mm', example });

const OF_A_HOLE: Record<HoleField, ListColumn> = {
  id: column('id', 'Hole', 'code', 'Its name in the plate: S1 in the shaft, H1 in the head.', {
    required: true,
    example: 'S1',
  }),
  segment: column('segment', 'Part of the plate', 'choice', 'Shaft or head.', {
    words: SEGMENT_WORDS,
    required: true,
    example: 'shaft',
  }),
  holeClass: column('holeClass', 'Hole class', 'choice', 'What it takes.', {
    words: HOLE_CLASS_WORDS,
    required: true,
    example: 'compression slot',
  }),
  alongMm: { ...mm('alongMm', 'Along', 'From the end of the shaft to its centre.', '12'), required: true },
  acrossMm: {
    ...mm('acrossMm', 'Across', 'From the middle line to its centre; to the right it is negative.', '0'),
    required: true,
  },
  openingMm: mm('openingMm', 'Opening', 'Narrowest opening of the plain zone.', '4.1'),
  seatMm: mm('seatMm', 'Seat', 'Widest part of the seat.'),
  slotMm: mm('slotMm', 'Slot length', 'Of slots, and of both zones together.'),
  plainSeat: column('plainSeat', 'Seat form', 'choice', 'Of the plain zone.', { words: PLAIN_SEAT_WORDS }),
  lockingFamily: column(
    'lockingFamily',
    'Locking family',
    'text',
    'Of a threaded zone; declared by the maker.',
  ),
  lockingConeDegrees: column(
    'lockingConeDegrees',
    'Locking cone',
    'whole',
    'Largest tilt at which it still locks, in degrees.',
    { unit: '°' },
  ),
  tiltAlongDegrees: column('tiltAlongDegrees', 'Tilt along', 'whole', 'Degrees; empty: 0.', { unit: '°' }),
  tiltAcrossDegrees: column('tiltAcrossDegrees', 'Tilt across', 'whole', 'Degrees; empty: 0.', { unit: '°' }),
};

export const holesList: ListInfo = {
  kind: 'holes',
  name: 'Holes of plates',
  rowIs: 'One hole of a plate.',
  does: 'The holes of each plate named become those of its rows, in their order. Plates that are not named stay as they are.',
  columns: [
    column('plate', 'Plate', 'code', 'The code of the plate.', {
      required: true,
      example: 'EX-PL-6',
      also: ['Plate code', 'Item code', 'Code'],
    }),
    ...HOLE_FIELDS.map((field) => OF_A_HOLE[field]),
  ],
  partialBy: null,
  bringIn: 'editCatalogue',
  takeOut: 'readHospital',
};
