import { mmFromMicrons } from '../quantities/length';
import type { Quantity } from './datatypes';

/** The Unified Code for Units of Measure (ucum.org), as FHIR names it. */
const UCUM = 'http://unitsofmeasure.org';

const quantity = (value: number, unit: string, code: string): Quantity => ({
  value,
  unit,
  system: UCUM,
  code,
});

/** Counted pieces have no unit: UCUM writes the unity, with what is counted as an annotation. */
export const pieces = (count: number): Quantity =>
  quantity(count, count === 1 ? 'piece' : 'pieces', '{piece}');
export const millimetres = (um: number): Quantity => quantity(mmFromMicrons(um), 'mm', 'mm');
export const grams = (count: number): Quantity => quantity(count, 'g', 'g');
/** A torque: UCUM multiplies with a dot. */
export const newtonMillimetres = (nmm: number): Quantity => quantity(nmm, 'N·mm', 'N.mm');
