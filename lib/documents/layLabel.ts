import { labelWords as words } from '../wording/label';
import {
  DOTS_PER_MM,
  LABEL_STOCKS,
  type Label,
  type LabelContent,
  type LabelStock,
  type LabelText,
  type Measure,
  type Weight,
} from './label';
import { type Fitted, fitLines, fitSize, keptTogether, LEADING, TIE, widthOf, wrap } from './labelLines';
import { LABEL_PLANS, type LabelPlan } from './labelPlans';

/** ISO/IEC 16022 asks for one module of quiet zone all round; labels are read at an angle, so it is two. */
const QUIET_MODULES = 2;
/** Top of the line to its baseline, as a share of the type size (DejaVu). */
const RISE = 0.92;

/**
 * Lays a label out in whole dots. What must be read stands whole or the layout says what it cut; what is short but has no
 * room is counted, never left out in silence.
 *
 * @param modules modules of the symbol on a side, without its quiet zone
 */
export function layLabel(content: LabelContent, stock: LabelStock, modules: number, measure: Measure): Label {
  const plan = LABEL_PLANS[stock];
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
    readonly plan: LabelPlan,
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
    this.write(number, x + (side - this.width(number, 'bold', em)) / 2, y, em, 'bold');
    y += Math.round(em * LEADING);
    if (copy === null) return;
    const boxHeight = Math.round(plan.number * LEADING) + 4;
    label.boxes.push({ x, y: y + 3, width: side, height: boxHeight });
    const inBox = x + (side - this.width(copy, 'bold', plan.number)) / 2;
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
      { weight: 'regular' as const, ...this.lines(keptTogether(facts), 'regular', plan.facts, room, 3) },
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
      some.flatMap((line) => wrap(this.measure, line, 'regular', em, room));
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

  /** The words in so many lines, as large as they go; what had to be cut goes on record. */
  private lines(text: string, weight: Weight, sizes: readonly number[], room: number, most: number): Fitted {
    const fitted = fitLines(this.measure, { text, weight, sizes, room, most });
    if (fitted.cut) this.label.cut.push(text);
    return fitted;
  }

  private emThatFits(text: string, weight: Weight, sizes: readonly number[], room: number): number {
    const { em, cut } = fitSize(this.measure, { text, weight, sizes, room });
    if (cut) this.label.cut.push(text);
    return em;
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
    this.label.texts.push({
      text: text.replaceAll(TIE, ' '),
      x: Math.round(x),
      y: Math.round(y + em * RISE),
      em,
      weight,
      colour,
    });
  }

  private width(text: string, weight: Weight, em: number): number {
    return widthOf(this.measure, text, weight, em);
  }
}
