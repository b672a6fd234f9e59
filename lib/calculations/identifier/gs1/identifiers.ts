import type { Meaning } from '../reading';
import { type Format, readFormat } from './format';

/** A GS1 application identifier. */
export interface Identifier {
  code: string;
  name: string;
  meaning: Meaning;
  format: Format;
  /** Its length is fixed by its first two digits, so that no separator follows. */
  predefined: boolean;
  /** Digits after the decimal point, for measures and amounts; their count is the identifier's last digit. */
  decimals: number | null;
}

/**
 * First two digits of the identifiers of predefined length: no separator is needed after these.
 * Source: GS1 General Specifications, element strings with predefined length using GS1 application identifiers.
 */
const PREDEFINED = new Set('00 01 02 03 04 11 12 13 14 15 16 17 18 19 20 31 32 33 34 35 36 41'.split(' '));

/**
 * Identifier or range, format, meaning, name. All there are, not only those a theatre meets: whether a text can be read
 * in one way alone depends on the others.
 *
 * Source: GS1 General Specifications, GS1 application identifiers; formats as GS1's syntax dictionary lists them.
 */
const TABLE: readonly (readonly [string, string, Meaning, string])[] = [
  ['00', 'N18:mod10', 'logisticUnit', 'SSCC'],
  ['01', 'N14:mod10', 'gtin', 'GTIN'],
  ['02', 'N14:mod10', 'containedGtin', 'GTIN of what is contained'],
  ['10', 'X..20', 'lot', 'Lot'],
  ['11', 'N6:date0', 'productionDate', 'Production date'],
  ['12', 'N6:date0', 'dueDate', 'Due date of payment'],
  ['13', 'N6:date0', 'packagingDate', 'Packaging date'],
  ['15', 'N6:date0', 'bestBefore', 'Best before'],
  ['16', 'N6:date0', 'sellBy', 'Sell by'],
  ['17', 'N6:date0', 'useBy', 'Use-by'],
  ['20', 'N2', 'variant', 'Internal variant'],
  ['21', 'X..20', 'serial', 'Serial number'],
  ['22', 'X..20', 'variant', 'Consumer variant'],
  ['235', 'X..28', 'other', 'Third-party serialised extension'],
  ['240', 'X..30', 'catalogueNumber', 'Additional item identification'],
  ['241', 'X..30', 'catalogueNumber', 'Customer part number'],
  ['242', 'N..6', 'variant', 'Made-to-order variant'],
  ['243', 'X..20', 'other', 'Packaging component number'],
  ['250', 'X..30', 'other', 'Secondary serial number'],
  ['251', 'X..30', 'other', 'Reference to source'],
  ['253', 'N13:mod10 X..17?', 'other', 'Document'],
  ['254', 'X..20', 'other', 'Extension of a place'],
  ['255', 'N13:mod10 N..12?', 'other', 'Coupon'],
  ['30', 'N..8', 'count', 'Count of pieces'],
  ['3100-3105', 'N6', 'measure', 'Net weight (kg)'],
  ['3110-3115', 'N6', 'measure', 'Length (m)'],
  ['3120-3125', 'N6', 'measure', 'Width (m)'],
  ['3130-3135', 'N6', 'measure', 'Height (m)'],
  ['3140-3145', 'N6', 'measure', 'Area (m²)'],
  ['3150-3155', 'N6', 'measure', 'Net volume (l)'],
  ['3160-3165', 'N6', 'measure', 'Net volume (m³)'],
  ['3200-3205', 'N6', 'measure', 'Net weight (lb)'],
  ['3210-3215', 'N6', 'measure', 'Length (in)'],
  ['3220-3225', 'N6', 'measure', 'Length (ft)'],
  ['3230-3235', 'N6', 'measure', 'Length (yd)'],
  ['3240-3245', 'N6', 'measure', 'Width (in)'],
  ['3250-3255', 'N6', 'measure', 'Width (ft)'],
  ['3260-3265', 'N6', 'measure', 'Width (yd)'],
  ['3270-3275', 'N6', 'measure', 'Height (in)'],
  ['3280-3285', 'N6', 'measure', 'Height (ft)'],
  ['3290-3295', 'N6', 'measure', 'Height (yd)'],
  ['3300-3305', 'N6', 'measure', 'Gross weight (kg)'],
  ['3310-3315', 'N6', 'measure', 'Length of the logistic unit (m)'],
  ['3320-3325', 'N6', 'measure', 'Width of the logistic unit (m)'],
  ['3330-3335', 'N6', 'measure', 'Height of the logistic unit (m)'],
  ['3340-3345', 'N6', 'measure', 'Area of the logistic unit (m²)'],
  ['3350-3355', 'N6', 'measure', 'Volume of the logistic unit (l)'],
  ['3360-3365', 'N6', 'measure', 'Volume of the logistic unit (m³)'],
  ['3370-3375', 'N6', 'measure', 'Mass per area (kg/m²)'],
  ['3400-3405', 'N6', 'measure', 'Gross weight (lb)'],
  ['3410-3415', 'N6', 'measure', 'Length of the logistic unit (in)'],
  ['3420-3425', 'N6', 'measure', 'Length of the logistic unit (ft)'],
  ['3430-3435', 'N6', 'measure', 'Length of the logistic unit (yd)'],
  ['3440-3445', 'N6', 'measure', 'Width of the logistic unit (in)'],
  ['3450-3455', 'N6', 'measure', 'Width of the logistic unit (ft)'],
  ['3460-3465', 'N6', 'measure', 'Width of the logistic unit (yd)'],
  ['3470-3475', 'N6', 'measure', 'Height of the logistic unit (in)'],
  ['3480-3485', 'N6', 'measure', 'Height of the logistic unit (ft)'],
  ['3490-3495', 'N6', 'measure', 'Height of the logistic unit (yd)'],
  ['3500-3505', 'N6', 'measure', 'Area (in²)'],
  ['3510-3515', 'N6', 'measure', 'Area (ft²)'],
  ['3520-3525', 'N6', 'measure', 'Area (yd²)'],
  ['3530-3535', 'N6', 'measure', 'Area of the logistic unit (in²)'],
  ['3540-3545', 'N6', 'measure', 'Area of the logistic unit (ft²)'],
  ['3550-3555', 'N6', 'measure', 'Area of the logistic unit (yd²)'],
  ['3560-3565', 'N6', 'measure', 'Net weight (troy oz)'],
  ['3570-3575', 'N6', 'measure', 'Net weight or volume (oz)'],
  ['3600-3605', 'N6', 'measure', 'Net volume (qt)'],
  ['3610-3615', 'N6', 'measure', 'Net volume (gal)'],
  ['3620-3625', 'N6', 'measure', 'Volume of the logistic unit (qt)'],
  ['3630-3635', 'N6', 'measure', 'Volume of the logistic unit (gal)'],
  ['3640-3645', 'N6', 'measure', 'Net volume (in³)'],
  ['3650-3655', 'N6', 'measure', 'Net volume (ft³)'],
  ['3660-3665', 'N6', 'measure', 'Net volume (yd³)'],
  ['3670-3675', 'N6', 'measure', 'Volume of the logistic unit (in³)'],
  ['3680-3685', 'N6', 'measure', 'Volume of the logistic unit (ft³)'],
  ['3690-3695', 'N6', 'measure', 'Volume of the logistic unit (yd³)'],
  ['37', 'N..8', 'count', 'Count of what is contained'],
  ['3900-3909', 'N..15', 'other', 'Amount'],
  ['3910-3919', 'N3 N..15', 'other', 'Amount with currency'],
  ['3920-3929', 'N..15', 'other', 'Price'],
  ['3930-3939', 'N3 N..15', 'other', 'Price with currency'],
  ['3940-3943', 'N4', 'other', 'Discount'],
  ['3950-3955', 'N6', 'other', 'Price per unit of measure'],
  ['400', 'X..30', 'other', 'Order number'],
  ['401', 'X..30', 'other', 'Consignment'],
  ['402', 'N17:mod10', 'other', 'Shipment'],
  ['403', 'X..30', 'other', 'Route'],
  ['410', 'N13:mod10', 'place', 'Ship to (GLN)'],
  ['411', 'N13:mod10', 'place', 'Bill to (GLN)'],
  ['412', 'N13:mod10', 'place', 'Purchased from (GLN)'],
  ['413', 'N13:mod10', 'place', 'Ship for (GLN)'],
  ['414', 'N13:mod10', 'place', 'Place (GLN)'],
  ['415', 'N13:mod10', 'place', 'Pay to (GLN)'],
  ['416', 'N13:mod10', 'place', 'Place of production or service (GLN)'],
  ['417', 'N13:mod10', 'place', 'Party (GLN)'],
  ['420', 'X..20', 'other', 'Ship to postal code'],
  ['421', 'N3 X..9', 'other', 'Ship to postal code with country'],
  ['422', 'N3', 'other', 'Country of origin'],
  ['423', 'N..15', 'other', 'Countries of first processing'],
  ['424', 'N3', 'other', 'Country of processing'],
  ['425', 'N..15', 'other', 'Countries of disassembly'],
  ['426', 'N3', 'other', 'Country of full processing'],
  ['427', 'X..3', 'other', 'Region of origin'],
  ['4300-4301', 'X..35', 'other', 'Ship to name'],
  ['4302-4306', 'X..70', 'other', 'Ship to address'],
  ['4307', 'X2', 'other', 'Ship to country'],
  ['4308', 'X..30', 'other', 'Ship to telephone'],
  ['4309', 'N20', 'other', 'Ship to position'],
  ['4310-4311', 'X..35', 'other', 'Return to name'],
  ['4312-4316', 'X..70', 'other', 'Return to address'],
  ['4317', 'X2', 'other', 'Return to country'],
  ['4318', 'X..20', 'other', 'Return to postal code'],
  ['4319', 'X..30', 'other', 'Return to telephone'],
  ['4320', 'X..35', 'other', 'Service'],
  ['4321-4323', 'N1:yesNo', 'other', 'Delivery flag'],
  ['4324', 'N6:date0 N4:time', 'other', 'Not before'],
  ['4325', 'N6:date0 N4:time', 'other', 'Not after'],
  ['4326', 'N6:date', 'other', 'Release date'],
  ['4330-4333', 'N6 X1?:minus', 'other', 'Temperature limit'],
  ['7001', 'N13', 'other', 'NATO stock number'],
  ['7002', 'X..30', 'other', 'Meat cut'],
  ['7003', 'N6:date N4:time', 'useBy', 'Use-by with time'],
  ['7004', 'N..4', 'other', 'Active potency'],
  ['7005', 'X..12', 'other', 'Catch area'],
  ['7006', 'N6:date', 'other', 'First frozen'],
  ['7007', 'N6:date N6?:date', 'other', 'Harvest date'],
  ['7008', 'X..3', 'other', 'Aquatic species'],
  ['7009', 'X..10', 'other', 'Fishing gear'],
  ['7010', 'X..2', 'other', 'Production method'],
  ['7011', 'N6:date N4?:time', 'other', 'Test by'],
  ['7020', 'X..20', 'other', 'Refurbishment lot'],
  ['7021', 'X..20', 'other', 'Functional status'],
  ['7022', 'X..20', 'other', 'Revision status'],
  ['7023', 'X..30', 'asset', 'Assembly of assets'],
  ['7030-7039', 'N3 X..27', 'other', 'Processor'],
  ['7040', 'N1 X3', 'other', 'Unique identifier code'],
  ['710', 'X..20', 'other', 'National reimbursement number, Germany'],
  ['711', 'X..20', 'other', 'National reimbursement number, France'],
  ['712', 'X..20', 'other', 'National reimbursement number, Spain'],
  ['713', 'X..20', 'other', 'National reimbursement number, Brazil'],
  ['714', 'X..20', 'other', 'National reimbursement number, Portugal'],
  ['715', 'X..20', 'other', 'National reimbursement number, United States'],
  ['7230-7239', 'X2 X..28', 'other', 'Certification'],
  ['7240', 'X..20', 'other', 'Protocol'],
  ['7241', 'N2', 'other', 'Kind of carrier'],
  ['7242', 'X..25', 'other', 'Version control number'],
  ['8001', 'N14', 'other', 'Roll dimensions'],
  ['8002', 'X..20', 'other', 'Mobile telephone identifier'],
  ['8003', 'N1:zero N13:mod10 X..16?', 'asset', 'Returnable asset (GRAI)'],
  ['8004', 'X..30', 'asset', 'Individual asset (GIAI)'],
  ['8005', 'N6', 'other', 'Price per unit'],
  ['8006', 'N14:mod10 N4:pieceOfTotal', 'other', 'Piece of a trade item (ITIP)'],
  ['8007', 'X..34', 'other', 'Bank account'],
  ['8008', 'N8:hour N..4?:minutes', 'productionDate', 'Production date with time'],
  ['8009', 'X..50', 'other', 'Sensor indicator'],
  ['8010', 'Y..30', 'other', 'Component or part (CPID)'],
  ['8011', 'N..12', 'other', 'Component serial number'],
  ['8012', 'X..20', 'other', 'Software version'],
  ['8013', 'X..25', 'other', 'Model (GMN)'],
  ['8017', 'N18:mod10', 'person', 'Service relation, provider (GSRN)'],
  ['8018', 'N18:mod10', 'person', 'Service relation, recipient (GSRN)'],
  ['8019', 'N..10', 'other', 'Service relation instance'],
  ['8020', 'X..25', 'other', 'Payment slip reference'],
  ['8026', 'N14:mod10 N4:pieceOfTotal', 'other', 'Contained piece of a trade item'],
  ['8030', 'Z..90', 'other', 'Digital signature'],
  ['8110', 'X..70', 'other', 'Coupon code'],
  ['8111', 'N4', 'other', 'Loyalty points'],
  ['8112', 'X..70', 'other', 'Positive-offer coupon code'],
  ['8200', 'X..70', 'other', 'Product address'],
  ['90', 'X..30', 'internal', 'Agreed between partners'],
  ['91-99', 'X..90', 'internal', 'Company internal'],
];

function expand([range, format, meaning, name]: (typeof TABLE)[number]): Identifier[] {
  const [from = '', to = from] = range.split('-');
  const read = readFormat(format);
  return Array.from({ length: Number(to) - Number(from) + 1 }, (_, step) => {
    const code = String(Number(from) + step).padStart(from.length, '0');
    return {
      code,
      name,
      meaning,
      format: read,
      predefined: PREDEFINED.has(code.slice(0, 2)),
      decimals: meaning === 'measure' ? Number(code.at(-1)) : null,
    };
  });
}

/** Every application identifier by its digits. No identifier is the beginning of another. */
export const IDENTIFIERS: ReadonlyMap<string, Identifier> = new Map(
  TABLE.flatMap(expand).map((identifier) => [identifier.code, identifier]),
);

/** The identifier that the text has at that place, or none. */
export function identifierAt(text: string, at: number): Identifier | undefined {
  for (const length of [2, 3, 4]) {
    const found = IDENTIFIERS.get(text.slice(at, at + length));
    if (found && found.code.length === length) return found;
  }
  return undefined;
}

/** Identifiers that must not stand together. Source: GS1 General Specifications, invalid pairs of element strings. */
export const EXCLUDED_PAIRS: readonly (readonly [string, string])[] = [
  ['01', '02'],
  ['01', '37'],
  ['01', '255'],
  ['01', '8006'],
  ['02', '8006'],
  ['02', '8026'],
  ['37', '8006'],
  ['8006', '8026'],
  ['21', '235'],
  ['255', '02'],
  ['255', '415'],
  ['255', '8006'],
  ['255', '8020'],
  ['420', '421'],
  ['421', '4307'],
  ['422', '426'],
  ['423', '426'],
  ['424', '426'],
  ['425', '426'],
  ['8017', '8018'],
];
