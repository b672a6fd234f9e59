/** Rules a component of a value keeps besides its characters and length. */
export type Rule =
  | 'mod10'
  | 'date0'
  | 'date'
  | 'time'
  | 'hour'
  | 'minutes'
  | 'zero'
  | 'pieceOfTotal'
  | 'yesNo'
  | 'minus';

/** Characters allowed: N digits, X the 82 of GS1 element strings, Y the 39 of part numbers, Z base64 for file names. */
export type CharacterSet = 'N' | 'X' | 'Y' | 'Z';

export interface Component {
  set: CharacterSet;
  least: number;
  most: number;
  optional: boolean;
  rule: Rule | null;
}

export interface Format {
  components: Component[];
  least: number;
  most: number;
}

/**
 * Reads a format: components with spaces between; `N6` is six digits, `X..20` one to twenty characters, `?` after it
 * makes it optional, `:mod10` adds a rule.
 */
export function readFormat(text: string): Format {
  const components = text.split(' ').map((part): Component => {
    const read = /^([NXYZ])(\.\.)?(\d+)(\?)?(?::(\w+))?$/.exec(part);
    if (!read) throw new Error(`not a format: ${part}`);
    const [, set, upTo, length, optional, rule] = read;
    return {
      set: set as CharacterSet,
      least: upTo ? 1 : Number(length),
      most: Number(length),
      optional: optional !== undefined,
      rule: (rule ?? null) as Rule | null,
    };
  });
  return {
    components,
    least: components.reduce((sum, { least, optional }) => sum + (optional ? 0 : least), 0),
    most: components.reduce((sum, { most }) => sum + most, 0),
  };
}

// GS1 General Specifications, GS1 AI encodable character sets 82 and 39; RFC 4648 §5 with padding
const OUTSIDE: Record<CharacterSet, RegExp> = {
  N: /[^0-9]/,
  X: /[^!"%&'()*+,\-./0-9:;<=>?A-Z_a-z]/,
  Y: /[^#\-/0-9A-Z]/,
  Z: /[^A-Za-z0-9_=-]/,
};

/** Place of the first character that is not of the set, or −1. */
export const firstOutside = (value: string, set: CharacterSet): number => value.search(OUTSIDE[set]);
