import { dateOf, dateOfDayOfYear, type ReadDate, slidingYear } from './dates';
import type { Element, Fault, Meaning, Reading } from './reading';

interface DateForm {
  digits: number;
  /** How many of its digits at the end are an hour. */
  hours: number;
  read: (digits: string, currentYear: number) => ReadDate;
}

const year = (digits: string, currentYear: number): number => slidingYear(Number(digits), currentYear);
const part = (digits: string, from: number): number => Number(digits.slice(from, from + 2));

const yymmdd: DateForm['read'] = (d, now) => dateOf(year(d.slice(0, 2), now), part(d, 2), part(d, 4));
const yyjjj: DateForm['read'] = (d, now) => dateOfDayOfYear(year(d.slice(0, 2), now), Number(d.slice(2, 5)));

/** Date formats by the digit before the date. A date that begins with 0 or 1 is a month and a year, without such digit. */
const FORMS: Readonly<Record<string, DateForm>> = {
  '2': {
    digits: 6,
    hours: 0,
    read: (d, now) => dateOf(year(d.slice(4, 6), now), part(d, 0), part(d, 2)),
  },
  '3': { digits: 6, hours: 0, read: yymmdd },
  '4': { digits: 8, hours: 2, read: yymmdd },
  '5': { digits: 5, hours: 0, read: yyjjj },
  '6': { digits: 7, hours: 2, read: yyjjj },
};
/** Month and year: good through the last day of the month. */
const MONTH_YEAR: DateForm = {
  digits: 4,
  hours: 0,
  read: (d, now) => dateOf(year(d.slice(2, 4), now), part(d, 0), 0, true),
};

/**
 * Secondary data: `$$` with quantity, use-by and lot; `$$+` with use-by and serial; `$` lot; `$+` serial; or five digits
 * YYJJJ with a lot. `null` where it begins with none of these.
 */
export function readSecondary(text: string, position: number, currentYear: number): Reading | null {
  const mark = /^(?:\$\$\+|\$\$|\$\+|\$)/.exec(text)?.[0] ?? '';
  if (mark === '' && !/^\d{5}/.test(text)) return null;
  const elements: Element[] = [];
  const faults: Fault[] = [];
  let from = mark.length;
  let written = mark;
  const add = (
    identifier: string | null,
    name: string,
    meaning: Meaning,
    value: string,
    plain: string | null,
  ) => {
    elements.push({ identifier, name, value, meaning, plain, position: position + from });
  };
  const quantity = mark === '$$' ? /^(?:8\d{2}|9\d{5})/.exec(text.slice(from))?.[0] : undefined;
  if (quantity) {
    from += 1;
    add(`$$${quantity[0]}`, 'Quantity', 'count', quantity.slice(1), String(Number(quantity.slice(1))));
    from += quantity.length - 1;
    written = '';
  }
  const dated = mark.startsWith('$$') || mark === '';
  if (dated && from < text.length) {
    const flag = text[from] ?? '';
    if (flag === '7' && mark !== '') {
      written += flag;
      from += 1;
    } else {
      const form = mark === '' ? FORMS['5'] : /[01]/.test(flag) ? MONTH_YEAR : FORMS[flag];
      const flagged = mark !== '' && form !== MONTH_YEAR;
      if (form) {
        if (flagged) {
          written += flag;
          from += 1;
        }
        const digits = text.slice(from, from + form.digits);
        const read = readUseBy(form, digits, position + from, currentYear);
        faults.push(...read.faults);
        add(written || null, 'Use-by', 'useBy', digits, read.plain);
        from += digits.length;
        written = '';
      } else {
        faults.push({
          kind: 'unknown-identifier',
          scheme: 'hibc',
          given: `${mark}${flag}`,
          position: position + from,
        });
        add(null, 'Unknown', 'unknown', text.slice(from), null);
        return { elements, faults };
      }
    }
  }
  const rest = text.slice(from);
  if (rest === '' && elements.length > 0) return { elements, faults };
  const serial = mark.endsWith('+');
  const name = serial ? 'Serial number' : 'Lot';
  const wrong = lengthFault(name, rest, position + from);
  if (wrong) faults.push(wrong);
  add(written || null, name, serial ? 'serial' : 'lot', rest, wrong ? null : rest);
  return { elements, faults };
}

function readUseBy(form: DateForm, digits: string, position: number, currentYear: number) {
  const name = 'Use-by';
  const faults: Fault[] = [];
  const outside = digits.search(/\D/);
  if (outside >= 0) {
    const character = digits[outside] ?? '';
    faults.push({ kind: 'bad-character', name, character, allowed: 'digits', position: position + outside });
  } else if (digits.length < form.digits) {
    faults.push({ kind: 'too-short', name, given: digits.length, least: form.digits, position });
  }
  if (faults.length > 0) return { faults, plain: null };
  const date = form.read(digits, currentYear);
  const hour = form.hours > 0 ? digits.slice(-2) : '';
  if (!date.ok)
    return { faults: [{ kind: 'no-such-date', name, fault: date.fault, position } as Fault], plain: null };
  if (Number(hour) > 23) {
    const at = position + form.digits - 2;
    return { faults: [{ kind: 'no-such-time', name, given: hour, position: at } as Fault], plain: null };
  }
  return { faults, plain: hour === '' ? date.date : `${date.date} ${hour}:00` };
}

/** What follows a further `/`: a serial number, a date of eight digits, a quantity. `null` for anything else. */
export function readSupplement(text: string, position: number): Reading | null {
  const serial = /^S(.+)$/.exec(text);
  if (serial) {
    const value = serial[1] ?? '';
    const wrong = lengthFault('Serial number', value, position + 1);
    return {
      elements: [
        {
          identifier: '/S',
          name: 'Serial number',
          value,
          meaning: 'serial',
          plain: wrong ? null : value,
          position: position + 1,
        },
      ],
      faults: wrong ? [wrong] : [],
    };
  }
  const dated = /^(14D|16D)(\d{4})(\d{2})(\d{2})$/.exec(text);
  if (dated) {
    const [, mark = '', yyyy, mm, dd] = dated;
    const useBy = mark === '14D';
    const name = useBy ? 'Use-by' : 'Production date';
    const date = dateOf(Number(yyyy), Number(mm), Number(dd));
    const place = position + mark.length;
    return {
      elements: [
        {
          identifier: `/${mark}`,
          name,
          value: text.slice(mark.length),
          meaning: useBy ? 'useBy' : 'productionDate',
          plain: date.ok ? date.date : null,
          position: place,
        },
      ],
      faults: date.ok ? [] : [{ kind: 'no-such-date', name, fault: date.fault, position: place }],
    };
  }
  const quantity = /^Q(\d{1,5})$/.exec(text)?.[1];
  if (quantity === undefined) return null;
  return {
    elements: [
      {
        identifier: '/Q',
        name: 'Quantity',
        value: quantity,
        meaning: 'count',
        plain: String(Number(quantity)),
        position: position + 1,
      },
    ],
    faults: [],
  };
}

/** Lot and serial have at most eighteen characters. */
function lengthFault(name: string, value: string, position: number): Fault | null {
  if (value.length > 18) {
    return {
      kind: 'too-long',
      name,
      given: value.length,
      most: 18,
      separated: true,
      position: position + 18,
    };
  }
  return value === '' ? { kind: 'too-short', name, given: 0, least: 1, position } : null;
}
