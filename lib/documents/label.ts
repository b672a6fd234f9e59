/** Label stock by width and height in millimetres. */
export const LABEL_STOCKS = {
  '100x50': { widthMm: 100, heightMm: 50 },
  '75x50': { widthMm: 75, heightMm: 50 },
  '50x25': { widthMm: 50, heightMm: 25 },
} as const;
export type LabelStock = keyof typeof LABEL_STOCKS;

/** A printer of 203 dots to the inch: 8 to the millimetre. */
export const DOTS_PER_MM = 8;

/** What a label says, in words. */
export interface LabelContent {
  /** Read across a table: the set's code, or that of the item in a pouch. */
  code: string;
  name: string;
  /** `null` where nothing is short. */
  short: {
    /** The one case it goes for. */
    onlyFor: string | null;
    /** What it stops, what is short, what travels with it: in this order, one sentence each. */
    lines: string[];
  } | null;
  /** Who packed it and when, barrier, mass, lot; those that stand on the smallest label too come first. */
  facts: string[];
  /** How many of the facts the smallest label has room for. */
  factsOnSmall: number;
  /** What makes it sterile, or that it is not; said strongly, and in few words for the smallest label. */
  sterility: string;
  sterilityOnSmall: string;
  caution: string;
  /** `P0001234-4`. */
  number: string;
  /** `copy 2`, where it is not the first. */
  copy: string | null;
}

export type Weight = 'regular' | 'bold';

export interface LabelText {
  text: string;
  /** Left end and baseline, in dots from the top left. */
  x: number;
  y: number;
  /** Type size in dots. */
  em: number;
  weight: Weight;
  colour: 'black' | 'white';
}

export interface LabelBox {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A label before there is ink: every thing on it in whole dots. */
export interface Label {
  stock: LabelStock;
  width: number;
  height: number;
  /** Black. */
  boxes: LabelBox[];
  texts: LabelText[];
  symbol: { x: number; y: number; moduleDots: number; quietModules: number };
  /** What did not fit and was cut short; nothing, for every name of the demo. */
  cut: string[];
}

/** Width of words as a share of the type size. */
export type Measure = (text: string, weight: Weight) => number;
