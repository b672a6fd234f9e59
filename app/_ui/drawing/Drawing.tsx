import type { ReactNode } from 'react';
import { pathData } from '@/lib/documents/drawing/path';
import type { Scene, Shape } from '@/lib/documents/drawing/scene';
import { classNames } from '../class-names';
import { ScrollRegion } from '../scroll-region';
import styles from './drawing.module.css';

/** One unit of the picture, in micrometres: fine enough for a pilot hole, and small numbers for a long plate. */
export const UNIT_UM = 100;

/** Micrometres of the scene as units of the picture, for overlays. */
export const units = (um: number): number => Math.round((um / UNIT_UM) * 100) / 100;

/**
 * A scene as a picture. Colours and dashes come from the tokens; lines keep their width at any size.
 *
 * @param title    the accessible name; leave it out only for a drawing beside the same words (it is then hidden from
 *                 screen readers)
 * @param words    the text alternative, from `drawingInWords`
 * @param pxPerMm  draws at this scale, and shrinks where there is no room; without it the picture fills its place
 * @param fit      `width` (default) takes the width it is given; `box` fits inside the box it is given; `sheet` takes the
 *                 width but never more than most of the screen's height
 * @param children overlays in units of the picture (see `units`), above the drawing
 */
export function Drawing({
  scene,
  title,
  words,
  pxPerMm,
  fit = 'width',
  readable = false,
  svgRef,
  children,
}: {
  scene: Scene;
  title?: string;
  words?: string;
  pxPerMm?: number;
  fit?: 'width' | 'box' | 'sheet';
  /** Keeps the type legible on narrow screens: the drawing is then scrolled sideways rather than shrunk. */
  readable?: boolean;
  svgRef?: React.Ref<SVGSVGElement>;
  children?: ReactNode;
}) {
  const width = units(scene.widthUm);
  const height = units(scene.heightUm);
  const interactive = children !== undefined;
  const picture = (
    <svg
      ref={svgRef}
      className={classNames(styles.drawing, styles[fit], readable && styles.readable)}
      viewBox={`0 0 ${width} ${height}`}
      width={pxPerMm === undefined ? undefined : Math.round((scene.widthUm / 1000) * pxPerMm)}
      height={pxPerMm === undefined ? undefined : Math.round((scene.heightUm / 1000) * pxPerMm)}
      role={title === undefined ? undefined : interactive ? 'group' : 'img'}
      aria-hidden={title === undefined && !interactive ? true : undefined}
      aria-label={title === undefined ? undefined : words === undefined ? title : `${title}. ${words}`}
      focusable="false"
    >
      {scene.shapes.map((shape, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the shapes of a scene are an ordered list without names
        <DrawnShape key={index} shape={shape} />
      ))}
      {children}
    </svg>
  );
  return readable ? (
    <ScrollRegion label={`${title ?? 'Drawing'}, to scale`}>{picture}</ScrollRegion>
  ) : (
    picture
  );
}

function inkClasses(shape: Exclude<Shape, { kind: 'text' }>): string {
  return classNames(
    styles.ink,
    shape.line === null ? styles.noLine : styles[`line-${shape.line}`],
    shape.fill === null ? styles.noFill : styles[`fill-${shape.fill}`],
  );
}

/** One shape of a scene, in units of the picture. */
export function DrawnShape({ shape }: { shape: Shape }) {
  switch (shape.kind) {
    case 'path':
      return <path className={inkClasses(shape)} d={pathData(shape, UNIT_UM)} />;
    case 'line':
      return (
        <line
          className={inkClasses(shape)}
          x1={units(shape.from.xUm)}
          y1={units(shape.from.yUm)}
          x2={units(shape.to.xUm)}
          y2={units(shape.to.yUm)}
        />
      );
    case 'circle':
      return (
        <circle
          className={inkClasses(shape)}
          cx={units(shape.centre.xUm)}
          cy={units(shape.centre.yUm)}
          r={units(shape.radiusUm)}
        />
      );
    case 'roundedRect':
      return (
        <rect
          className={inkClasses(shape)}
          x={units(shape.xUm)}
          y={units(shape.yUm)}
          width={units(shape.widthUm)}
          height={units(shape.heightUm)}
          rx={units(shape.radiusUm)}
        />
      );
    case 'text':
      return (
        <text
          className={classNames(styles.text, styles[`text-${shape.textClass}`])}
          x={units(shape.at.xUm)}
          y={units(shape.at.yUm + shape.heightUm * 0.34)}
          fontSize={units(shape.heightUm)}
          textAnchor={shape.anchor}
          transform={shape.upright ? `rotate(-90 ${units(shape.at.xUm)} ${units(shape.at.yUm)})` : undefined}
        >
          {shape.text}
        </text>
      );
  }
}
