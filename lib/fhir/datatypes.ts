/**
 * The data types of FHIR R5 as far as this program writes them (hl7.org/fhir/R5/datatypes.html, references.html). What is not
 * known is not said: an element is left out, or, where R5 demands it, carries why it is absent.
 */

export interface Extension {
  url: string;
  valueCode: string;
}

interface MayBeAbsent {
  extension?: Extension[];
}

export interface Coding {
  system?: string;
  code: string;
  display?: string;
}

export interface CodeableConcept {
  coding?: Coding[];
  text?: string;
}

export interface Identifier {
  system: string;
  value: string;
  assigner?: { display: string };
}

export interface Quantity extends MayBeAbsent {
  value?: number;
  unit?: string;
  system?: string;
  code?: string;
}

export interface Ratio extends MayBeAbsent {
  numerator?: Quantity;
  denominator?: Quantity;
}

export interface Period extends MayBeAbsent {
  start?: string;
  end?: string;
}

export interface Reference extends MayBeAbsent {
  reference?: string;
  type?: string;
  identifier?: Identifier;
  display?: string;
}

export interface CodeableReference {
  concept?: CodeableConcept;
  reference?: Reference;
}

/** What every resource has. */
export interface Resource {
  resourceType: string;
  id?: string;
  meta?: { lastUpdated: string };
}
