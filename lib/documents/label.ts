import { labelWords as words } from '../wording/label';

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

/** ISO/IEC 16022 asks for one module of quiet zone all round; labels are read at an angle, so it is two. */
const QUIET_MODULES = 2;
/** Baseline to baseline, and top of the line to its baseline, as shares of the type size (DejaVu). */
const LEADING = 1.16;
const RISE = 0.92;

interface Plan {
  margin: number;
  gap: number;
  /** 0.63 or 0.88 mm: within 0.254 to 0.990 mm, which GS1 asks of DataMatrix in healthcare, and left by a dot too few. */
  moduleDots: number;
  code: number[];
  name: number[];
  nameLines: number;
  bar: number;
  body: number[];
  facts: number[];
  caution: number | null;
  number: number;
}

const PLANS: Record<LabelStock, Plan> = {
  '100x50': {
    margin: 16,
    gap: 8,
    moduleDots: 7,
    code: [88, 72, 60, 48, 40, 32],
    name: [32, 28, 24],
    nameLines: 2,
    bar: 34,
    body: [24, 21, 19],
    facts: [23, 21, 19],
    caution: 16,
    number: 24,
  },
  '75x50': {
    margin: 14,
    gap: 7,
    moduleDots: 7,
    code: [76, 64, 52, 42, 34, 28],
    name: [28, 24, 21],
    nameLines: 3,
    bar: 32,
    body: [21, 19, 18],
    facts: [20, 18, 17],
    caution: 16,
    number: 22,
  },
  '50x25': {
    margin: 8,
    gap: 4,
    moduleDots: 5,
    code: [44, 36, 30, 26, 22, 19],
    name: [19, 17, 16],
    nameLines: 2,
    bar: 22,
    body: [17, 16],
    facts: [16],
    caution: null,
    number: 17,
  },
};

/**
 * Lays a label out in whole dots. What must be read stands whole or the layout says what it cut; what is short but has no
 * room is counted, never left out in silence.
 *
 * @param modules modules of the symbol on a side, without its quiet zone
 */
export function layLabel(content: LabelContent, stock: LabelStock, modules: number, measure: Measure): Label {
  const plan = PLANS[stock];
  const size = LABEL_STOCKS[stock];
  const width = size.widthMm * DOTS_PER_MM;
  const height = size.heightMm * DOTS_PER_MM;
  const side = (modules + 2 * QUIET_MODULES) * plan.moduleDots;
  const right = width - plan.margin;
  const label: Label = {
    stock,
    width,
    height,
    boxes: [],
    texts: [],
    symbol: {
      x: right - side,
      y: plan.margin,
      moduleDots: plan.moduleDots,
      quietModules: QUIET_MODULES,
    },
    cut: [],
  };
  const pen = new LabelPen(label, plan, measure, right - side - 2 * plan.gap);
  pen.beside(content, right - side, side);
  const top = pen.head(content);
  const bottom = pen.foot(content);
  if (content.short) pen.short(content.short, top, bottom);
  return label;
}

class LabelPen {
  readonly left: number;
  constructor(
    readonly label: Label,
    readonly plan: Plan,
    readonly measure: Measure,
    /** Where the column beside the symbol ends. */
    readonly columnEnd: number,
  ) {
    this.left = plan.margin;
  }

  /** Number and copy below the symbol. */
  beside({ number, copy }: LabelContent, x: number, side: number): void {
    const { plan, label } = this;
    let y = label.symbol.y + side;
    const em = this.emThatFits(number, 'bold', [plan.number, plan.number - 2, plan.number - 4, 12], side);
    this.write(number, x + (side - this.widthOf(number, 'bold', em)) / 2, y, em, 'bold');
    y += Math.round(em * LEADING);
    if (copy === null) return;
    const boxHeight = Math.round(plan.number * LEADING) + 4;
    label.boxes.push({ x, y: y + 3, width: side, height: boxHeight });
    const inBox = x + (side - this.widthOf(copy, 'bold', plan.number)) / 2;
    this.write(copy, inBox, y + 5, plan.number, 'bold', 'white');
  }

  /** Code and name; answers where they end. */
  head({ code, name }: LabelContent): number {
    const { plan } = this;
    const room = this.columnEnd - this.left;
    let y = plan.margin - Math.round(plan.gap / 2);
    const big = this.lines(code, 'bold', plan.code, room, 1);
    y = this.writeAll(big, y, 'bold');
    const named = this.lines(name, 'regular', plan.name, room, plan.nameLines);
    return this.writeAll(named, y, 'regular') + plan.gap;
  }

  /** Facts, sterility and caution, standing on the lower edge; answers where they begin. */
  foot(content: LabelContent): number {
    const { plan, label } = this;
    const small = plan.caution === null;
    const facts = small ? content.facts.slice(0, content.factsOnSmall) : content.facts;
    const sterility = small ? content.sterilityOnSmall : content.sterility;
    const { caution } = content;
    const bottom = label.height - plan.margin + Math.round(plan.gap / 2);
    const symbolEnd = this.besideEnd();
    // below the symbol the whole width is free, beside it only the column is
    const wide = label.width - plan.margin - this.left;
    const narrow = this.columnEnd - this.left;
    const blocks = (room: number) => [
      { weight: 'regular' as const, ...this.lines(facts.join(' · '), 'regular', plan.facts, room, 3) },
      { weight: 'bold' as const, ...this.lines(sterility, 'bold', plan.facts, room, 2) },
      ...(plan.caution === null
        ? []
        : [{ weight: 'regular' as const, ...this.lines(caution, 'regular', [plan.caution], room, 2) }]),
    ];
    const heightOf = (some: ReturnType<typeof blocks>) =>
      some.reduce((sum, { lines, em }) => sum + lines.length * Math.round(em * LEADING), 0);
    const across = blocks(wide);
    const fits = bottom - heightOf(across) >= symbolEnd;
    const chosen = fits ? across : blocks(narrow);
    let y = bottom - heightOf(chosen);
    const begin = y;
    for (const block of chosen) y = this.writeAll(block, y, block.weight);
    return begin - plan.gap;
  }

  /** The word SHORT in white on black, then as much of what it means as there is room for. */
  short({ onlyFor, lines }: NonNullable<LabelContent['short']>, top: number, bottom: number): void {
    const { plan, label } = this;
    const end = top >= this.besideEnd() ? label.width - plan.margin : this.columnEnd;
    const barHeight = Math.round(plan.bar * LEADING) + 2;
    label.boxes.push({ x: this.left, y: top, width: end - this.left, height: barHeight });
    const word = onlyFor === null ? words.short : words.shortFor(onlyFor);
    const room = end - this.left - 2 * plan.gap;
    const ladder = [plan.bar, plan.bar - 6, Math.round(plan.bar * 0.7), Math.round(plan.bar * 0.6)];
    const em = this.emThatFits(word, 'bold', ladder, room);
    const middle = top + (barHeight - em * LEADING) / 2;
    this.write(word, this.left + plan.gap, middle, em, 'bold', 'white');
    const from = top + barHeight + Math.round(plan.gap / 2);
    this.fill(lines, from, bottom, end - this.left);
  }

  /** Whole sentences while there is room; how many more there are, where there is none. */
  private fill(lines: readonly string[], from: number, bottom: number, room: number): void {
    const laid = (em: number, some: readonly string[]) =>
      some.flatMap((line) => this.wrap(line, 'regular', em, room));
    const { body } = this.plan;
    for (const em of body) {
      const all = laid(em, lines);
      if (all.length * Math.round(em * LEADING) <= bottom - from) {
        this.writeAll({ lines: all, em }, from, 'regular');
        return;
      }
    }
    const em = body[body.length - 1] ?? 16;
    for (let kept = lines.length - 1; kept >= 0; kept -= 1) {
      const some = [...laid(em, lines.slice(0, kept)), ...laid(em, [words.more(lines.length - kept, kept)])];
      if (some.length * Math.round(em * LEADING) > bottom - from && kept > 0) continue;
      this.writeAll({ lines: some, em }, from, 'regular');
      if (some.length * Math.round(em * LEADING) > bottom - from) this.label.cut.push(lines.join(' '));
      return;
    }
  }

  /** Where number and copy below the symbol end. */
  private besideEnd(): number {
    const { label, plan } = this;
    const texts = label.texts
      .filter(({ x }) => x >= this.columnEnd)
      .map(({ y, em }) => y + em * (LEADING - RISE));
    const boxes = label.boxes.filter(({ x }) => x >= this.columnEnd).map(({ y, height }) => y + height);
    return Math.ceil(Math.max(...texts, ...boxes, 0)) + plan.gap;
  }

  /** The largest size at which the words stand in so many lines; cut, and said so, where even the smallest is too large. */
  private lines(text: string, weight: Weight, sizes: readonly number[], room: number, most: number) {
    for (const em of sizes) {
      const lines = this.wrap(text, weight, em, room);
      if (lines.length <= most && lines.every((line) => this.widthOf(line, weight, em) <= room))
        return { lines, em };
    }
    const em = sizes[sizes.length - 1] ?? 16;
    const lines = this.wrap(text, weight, em, room).slice(0, most);
    this.label.cut.push(text);
    return { lines: [...lines.slice(0, -1), `${(lines.at(-1) ?? '').slice(0, -1)}…`], em };
  }

  private emThatFits(text: string, weight: Weight, sizes: readonly number[], room: number): number {
    const em = sizes.find((one) => this.widthOf(text, weight, one) <= room);
    if (em === undefined) this.label.cut.push(text);
    return em ?? sizes[sizes.length - 1] ?? 12;
  }

  private wrap(text: string, weight: Weight, em: number, room: number): string[] {
    const lines: string[] = [];
    let line = '';
    for (const word of text.split(' ').filter((one) => one !== '')) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line === '' || this.widthOf(longer, weight, em) <= room) line = longer;
      else {
        lines.push(line);
        line = word;
      }
    }
    return line === '' ? lines : [...lines, line];
  }

  private writeAll(
    { lines, em }: { lines: readonly string[]; em: number },
    y: number,
    weight: Weight,
  ): number {
    const step = Math.round(em * LEADING);
    lines.forEach((line, at) => {
      this.write(line, this.left, y + at * step, em, weight);
    });
    return y + lines.length * step;
  }

  /** `y` is the top of the line. */
  private write(
    text: string,
    x: number,
    y: number,
    em: number,
    weight: Weight,
    colour: LabelText['colour'] = 'black',
  ): void {
    this.label.texts.push({ text, x: Math.round(x), y: Math.round(y + em * RISE), em, weight, colour });
  }

  private widthOf(text: string, weight: Weight, em: number): number {
    return this.measure(text, weight) * em;
  }
}
