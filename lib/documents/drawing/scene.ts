import type { HoleClass } from '../../catalogue/hole';

/**
 * What a drawing is before there is ink: shapes in whole micrometres, each with the class of its line.
 * The same scene is painted on screen as SVG and on paper as PDF. The origin is the top left corner,
 * x runs right and y runs down; every coordinate and size is in micrometres of the thing drawn.
 */
export interface Scene {
  widthUm: number;
  heightUm: number;
  shapes: Shape[];
  /** Holes of a plate, so that a planner can point at them; empty for everything else. */
  holes: SceneHole[];
  /**
   * Where the item's own origin lies in the scene. For a plate: the middle of its shaft end, so that
   * `along = x − originXUm` and `across = originYUm − y`.
   */
  originXUm: number;
  originYUm: number;
  /** What is measured on the drawing, for the text alternative; `um: null` is not stated. */
  measures: SceneMeasure[];
  /** True when the middle of a long thing was left out, between two break lines. */
  interrupted: boolean;
}

/** The one line style: how a line is drawn says what it is. */
export type LineClass =
  | 'outline'
  | 'fine'
  | 'hidden'
  | 'centre'
  | 'thread'
  | 'zone'
  | 'accent'
  | 'dimension'
  /** An edge whose place nobody has stated: dashed, and said so in words. */
  | 'notStated';

export type FillClass = 'material' | 'void' | 'zone' | 'accent' | 'ink';

export type TextClass = 'label' | 'dimension' | 'notStated' | 'accent';

export interface Point {
  xUm: number;
  yUm: number;
}

/** One step of a path, to `xUm`, `yUm`. An arc is drawn clockwise or not; it is always the shorter unless `large`. */
export type Segment =
  | { kind: 'line'; xUm: number; yUm: number }
  | { kind: 'arc'; xUm: number; yUm: number; radiusUm: number; clockwise: boolean; large: boolean }
  | { kind: 'curve'; control1: Point; control2: Point; xUm: number; yUm: number };

export interface Path {
  from: Point;
  segments: Segment[];
  closed: boolean;
}

export interface Ink {
  line: LineClass | null;
  fill: FillClass | null;
}

export type Shape =
  | ({ kind: 'path' } & Path & Ink)
  | ({ kind: 'line'; from: Point; to: Point } & Ink)
  | ({ kind: 'circle'; centre: Point; radiusUm: number } & Ink)
  | ({
      kind: 'roundedRect';
      xUm: number;
      yUm: number;
      widthUm: number;
      heightUm: number;
      radiusUm: number;
    } & Ink)
  | {
      kind: 'text';
      at: Point;
      text: string;
      /** Height of the type, em to em. */
      heightUm: number;
      anchor: 'start' | 'middle' | 'end';
      textClass: TextClass;
      /** Reads from bottom to top. */
      upright: boolean;
    };

export interface SceneHole {
  id: string;
  holeClass: HoleClass;
  centre: Point;
  /** The outer edge of the hole, for pointing at it and for marking it. */
  outline: Path;
  widthUm: number;
  heightUm: number;
}

export interface SceneMeasure {
  name: string;
  um: number | null;
}

/** Stroke widths on paper, in micrometres of paper, and dashes in multiples of the width. One table for all painters. */
export const LINE_STYLES: Record<LineClass, { paperUm: number; dash: readonly number[] }> = {
  outline: { paperUm: 250, dash: [] },
  fine: { paperUm: 130, dash: [] },
  hidden: { paperUm: 130, dash: [6, 4] },
  centre: { paperUm: 100, dash: [16, 4, 3, 4] },
  thread: { paperUm: 110, dash: [] },
  zone: { paperUm: 180, dash: [8, 5] },
  accent: { paperUm: 350, dash: [] },
  dimension: { paperUm: 90, dash: [] },
  notStated: { paperUm: 180, dash: [3, 4] },
};
