import type { ItemOf } from '../../catalogue/item';
import { compose, type DrawOptions, textHeight, underneath } from './compose';
import { dimensionUpright } from './dimensions';
import { box, circle, line } from './marks';
import type { LineClass, Scene, Shape } from './scene';

/** Racks, baskets and containers seen from above. */

type Boxed = ItemOf<'rack'> | ItemOf<'basket'> | ItemOf<'container'>;

interface Plan {
  length: number;
  width: number;
  edge: LineClass;
}

function planOf(item: Boxed, length: number, width: number): Plan {
  const stated = item.lengthUm !== null && item.widthUm !== null;
  return {
    length: item.lengthUm ?? length,
    width: item.widthUm ?? width,
    edge: stated ? 'outline' : 'notStated',
  };
}

/** A screw rack: its grid of holes, rows down and columns across. */
export function drawRack(rack: ItemOf<'rack'>, options: DrawOptions = {}): Scene {
  const plan = planOf(rack, Math.max(60_000, rack.columns * 8_000), Math.max(40_000, rack.rows * 8_000));
  const stepX = plan.length / (rack.columns + 1);
  const stepY = plan.width / (rack.rows + 1);
  const radius = Math.min((rack.forThreadUm ?? 3_500) / 2, stepX * 0.4, stepY * 0.4);
  const line: LineClass = rack.forThreadUm === null ? 'notStated' : 'fine';
  const cells = Array.from({ length: rack.rows * rack.columns }, (_, index) =>
    circle(
      stepX * ((index % rack.columns) + 1),
      stepY * (Math.floor(index / rack.columns) + 1),
      radius,
      line,
      'void',
    ),
  );
  return boxScene(
    rack,
    plan,
    [box(0, 0, plan.length, plan.width, Math.min(plan.length, plan.width) * 0.05, plan.edge), ...cells],
    options,
  );
}

/** A mesh basket with its two handles. */
export function drawBasket(basket: ItemOf<'basket'>, options: DrawOptions = {}): Scene {
  const plan = planOf(basket, 480_000, 250_000);
  const { length, width, edge } = plan;
  const inset = Math.min(length, width) * 0.04;
  const wires = (count: number, span: number, make: (at: number) => Shape) =>
    Array.from({ length: count }, (_, index) =>
      make(inset + ((span - 2 * inset) * (index + 1)) / (count + 1)),
    );
  return boxScene(
    basket,
    plan,
    [
      box(0, 0, length, width, inset, edge),
      box(inset, inset, length - 2 * inset, width - 2 * inset, inset * 0.6, 'fine', 'void'),
      ...wires(17, length, (x) => line(x, inset, x, width - inset, 'thread')),
      ...wires(8, width, (y) => line(inset, y, length - inset, y, 'thread')),
      box(-inset * 1.5, width * 0.32, inset * 1.5, width * 0.36, inset * 0.5, 'fine', null),
      box(length, width * 0.32, inset * 1.5, width * 0.36, inset * 0.5, 'fine', null),
    ],
    options,
  );
}

/** A lidded container with its latches. */
export function drawContainer(container: ItemOf<'container'>, options: DrawOptions = {}): Scene {
  const plan = planOf(container, 590_000, 280_000);
  const { length, width, edge } = plan;
  const inset = Math.min(length, width) * 0.06;
  return boxScene(
    container,
    plan,
    [
      box(0, 0, length, width, inset, edge),
      box(inset, inset, length - 2 * inset, width - 2 * inset, inset * 0.5, 'fine', 'material'),
      circle(length * 0.3, width / 2, width * 0.16, 'fine', 'void'),
      circle(length * 0.7, width / 2, width * 0.16, 'fine', 'void'),
      box(-inset * 0.6, width * 0.4, inset, width * 0.2, inset * 0.2),
      box(length - inset * 0.4, width * 0.4, inset, width * 0.2, inset * 0.2),
    ],
    options,
  );
}

function boxScene(item: Boxed, { length, width }: Plan, shapes: Shape[], options: DrawOptions): Scene {
  const textUm = textHeight(shapes, options);
  const all = [...shapes];
  if (options.dimensions) {
    all.push(...dimensionUpright(0, width, length * 1.06 + textUm, length, { um: item.widthUm, textUm }));
    all.push(...underneath(all, 0, length, { um: item.lengthUm, textUm }));
  }
  return compose({
    shapes: all,
    measures: [
      { name: 'length', um: item.lengthUm },
      { name: 'width', um: item.widthUm },
      { name: 'height', um: item.heightUm },
    ],
  });
}
