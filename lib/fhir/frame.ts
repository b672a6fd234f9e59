/** What all resources of one answer share. */
export interface Frame {
  /** The address of the service, without a slash at its end: `https://kitwright.example/api/v1/fhir`. */
  base: string;
  /** Whose identifiers they are. */
  hospital: string;
  /** The moment the answer is made. */
  now: string;
}

/** What our own identifiers name; each has a system of its own under the service's address. */
export type OwnSystem =
  | 'item-code'
  | 'maker'
  | 'configuration-code'
  | 'configuration-version'
  | 'set-code'
  | 'stock'
  | 'place'
  | 'stock-count'
  | 'case-reference'
  | 'restock-line'
  | 'order-number'
  | 'order-part'
  | 'delivery-line'
  | 'move-of-a-piece';

/** The URI under which an identifier or code of this hospital is unique. */
export const ownSystem = ({ base }: Pick<Frame, 'base'>, name: OwnSystem): string =>
  `${base}/identifiers/${name}`;
