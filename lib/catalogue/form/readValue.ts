import type { Problem } from '../../identity/result';
import { micronsFromMm } from '../../quantities/length';
import type { ItemDraft } from './draft';
import { formName, type ItemField } from './fields';

/** Most of one list that a form may carry; more is not read at all. */
const MOST = 60;

/** A form being read, and what could not be read in it. */
export interface Reading {
  draft: ItemDraft;
  problems: Problem[];
}

type Path = (string | number)[];

/** One field of the form as the item has it; what can't be read is noted and counts as not stated. */
export function readValue(field: ItemField, reading: Reading): unknown {
  const name = formName(field.key);
  const path: Path = [field.key];
  switch (field.entry) {
    case 'mm':
      return readMm(reading, name, path);
    case 'whole':
      return readWhole(reading, name, path);
    case 'pounds':
      return readPounds(reading, name, path);
    case 'yesNo':
      return readYesNo(textAt(reading, name));
    case 'flag':
      return textAt(reading, name) === 'yes';
    case 'choice':
      return textAt(reading, name) || null;
    case 'mmList': {
      const parts = listAt(reading, name);
      if (parts.length === 0) return field.unknown ? null : [];
      return parts.map((part, index) => mmOf(reading, part, [...path, index]));
    }
    case 'textList': {
      const parts = listAt(reading, name);
      return parts.length === 0 ? null : parts;
    }
    case 'drive':
      return readDrive(reading);
    case 'coupling':
      return readCoupling(reading, field.key, path);
    case 'couplings': {
      const takes = indexes(reading, field.key).map((index) =>
        readCoupling(reading, `${field.key}.${index}`, [...path, index]),
      );
      return takes.length === 0 ? null : takes;
    }
    case 'ends':
      return indexes(reading, 'ends').map((index) => readEnd(reading, index));
    case 'holes':
      return indexes(reading, 'holes').map((index) => readHole(reading, index));
    default:
      return textAt(reading, name) || (field.required ? '' : null);
  }
}

function textAt({ draft }: Reading, name: string): string {
  const text = draft[name];
  return typeof text === 'string' ? text.trim() : '';
}

function listAt(reading: Reading, name: string): string[] {
  return textAt(reading, name)
    .split(/[,;]\s*/)
    .map((part) => part.trim())
    .filter(Boolean)
    .slice(0, MOST);
}

function indexes(reading: Reading, name: string): number[] {
  const count = Number(textAt(reading, `${name}.count`));
  return Number.isInteger(count) && count > 0
    ? Array.from({ length: Math.min(count, MOST + 1) }, (_, index) => index)
    : [];
}

function readYesNo(text: string): boolean | null {
  return text === '' ? null : text === 'yes';
}

function readMm(reading: Reading, name: string, path: Path): number | null {
  const text = textAt(reading, name);
  return text === '' ? null : mmOf(reading, text, path);
}

/** Whole micrometres, or a problem: what can't be read is not stated until it is put right. */
function mmOf(reading: Reading, text: string, path: Path): number | null {
  try {
    return micronsFromMm(text.replace('−', '-'));
  } catch {
    const shown = text.length > 20 ? `${text.slice(0, 20)}…` : text;
    reading.problems.push({
      path,
      code: 'not-a-length',
      message: `“${shown}” is not a length: write millimetres, such as 3.5.`,
    });
    return null;
  }
}

function readWhole(reading: Reading, name: string, path: Path): number | null {
  const text = textAt(reading, name).replace('−', '-');
  if (text === '') return null;
  if (/^-?\d{1,9}$/.test(text)) return Number(text);
  reading.problems.push({ path, code: 'not-a-whole-number', message: 'Write a whole number.' });
  return null;
}

function readPounds(reading: Reading, name: string, path: Path): number | null {
  const text = textAt(reading, name).replace(/^£\s*/, '').replace(',', '.');
  if (text === '') return null;
  if (/^\d{1,8}(\.\d{1,2})?$/.test(text)) return Math.round(Number(text) * 100);
  reading.problems.push({
    path,
    code: 'not-an-amount',
    message: 'Write an amount in pounds, such as 12.50.',
  });
  return null;
}

function readDrive(reading: Reading): unknown {
  const form = textAt(reading, 'drive.form');
  const size = textAt(reading, 'drive.size');
  if (form === '') {
    if (size !== '')
      reading.problems.push({
        path: ['drive', 'form'],
        code: 'drive-without-form',
        message: 'Choose the form of the drive.',
      });
    return null;
  }
  if (size === '') {
    reading.problems.push({
      path: ['drive', 'size'],
      code: 'drive-without-size',
      message: 'State the size of the drive, or leave the form empty.',
    });
    return null;
  }
  if (form === 'hexalobular') {
    const number = readWhole(reading, 'drive.size', ['drive', 'size']);
    return number === null ? null : { form, number };
  }
  const um = mmOf(reading, size, ['drive', 'size']);
  if (um === null) return null;
  return form === 'hexagonSocket' ? { form, acrossFlatsUm: um } : { form, sizeUm: um };
}

function readCoupling(reading: Reading, at: string, path: Path): unknown {
  const form = textAt(reading, `${at}.form`);
  const size = textAt(reading, `${at}.sizeMm`);
  if (form === '' && size === '') return null;
  if (form === '' || size === '') {
    const missing = form === '' ? 'form' : 'sizeUm';
    reading.problems.push({
      path: [...path, missing],
      code: 'half-a-shank',
      message: 'State form and size of the shank, or neither.',
    });
    return null;
  }
  const sizeUm = mmOf(reading, size, [...path, 'sizeUm']);
  return sizeUm === null ? null : { form, sizeUm };
}

function readEnd(reading: Reading, index: number): unknown {
  const at = (field: string) => `ends.${index}.${field}`;
  const seatsOn = listAt(reading, at('seatsOn'));
  const positions = listAt(reading, at('positions'));
  return {
    boreUm: readMm(reading, at('boreMm'), ['ends', index, 'boreUm']),
    outerUm: readMm(reading, at('outerMm'), ['ends', index, 'outerUm']),
    outerForm: textAt(reading, at('outerForm')) || null,
    seatsOn: seatsOn.length === 0 ? null : seatsOn,
    positions: positions.length === 0 ? null : positions,
    lockingFamily: textAt(reading, at('lockingFamily')) || null,
  };
}

function readHole(reading: Reading, index: number): unknown {
  const name = (field: string) => `holes.${index}.${field}`;
  const path = (field: string): Path => ['holes', index, field];
  const needed = (field: string, um: string) => {
    if (textAt(reading, name(field)) === '') {
      reading.problems.push({ path: path(um), code: 'place-missing', message: 'Say where the hole lies.' });
      return null;
    }
    return readMm(reading, name(field), path(um));
  };
  return {
    id: textAt(reading, name('id')),
    segment: textAt(reading, name('segment')) || 'shaft',
    holeClass: textAt(reading, name('holeClass')),
    alongUm: needed('alongMm', 'alongUm'),
    acrossUm: needed('acrossMm', 'acrossUm'),
    tiltAlongDegrees: readWhole(reading, name('tiltAlongDegrees'), path('tiltAlongDegrees')) ?? 0,
    tiltAcrossDegrees: readWhole(reading, name('tiltAcrossDegrees'), path('tiltAcrossDegrees')) ?? 0,
    openingUm: readMm(reading, name('openingMm'), path('openingUm')),
    seatUm: readMm(reading, name('seatMm'), path('seatUm')),
    plainSeat: textAt(reading, name('plainSeat')) || null,
    slotUm: readMm(reading, name('slotMm'), path('slotUm')),
    lockingFamily: textAt(reading, name('lockingFamily')) || null,
    lockingConeDegrees: readWhole(reading, name('lockingConeDegrees'), path('lockingConeDegrees')),
  };
}
