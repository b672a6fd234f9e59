import type { DepthGauge, Driver, Handle, TorqueLimiter } from '../../catalogue/item';
import { writeMm } from '../../quantities/length';
import { compose, type DrawOptions, textHeight, underneath } from './compose';
import { driveMark, driveWidthUm } from './drive';
import { arrowHead, box, centreCross, circle, drawn, line, polyline, words } from './marks';
import { trace } from './path';
import { breakLines, couplingLength, grip, shankEnd, shownLength } from './rod';
import type { Scene, Shape } from './scene';

/** What is held in the hand: depth gauges, drivers, handles and torque limiters, with their working end at the right. */

export function drawGauge(gauge: DepthGauge, options: DrawOptions = {}): Scene {
  const from = gauge.fromUm ?? 10_000;
  const to = gauge.toUm ?? Math.max(60_000, from + 50_000);
  const stated = gauge.fromUm !== null && gauge.toUm !== null;
  const hook = gauge.hookUm ?? 2_000;
  const range = Math.max(1_000, to - from);
  const edge = stated ? 'outline' : 'notStated';
  const width = Math.max(range * 0.1, hook * 2.2);
  const grips = range * 0.45;
  const nose = range * 0.16;
  const reach = range + nose + Math.min(from, range * 0.4);
  const rod = hook * 0.55;
  const shapes: Shape[] = [
    ...grip(0, grips, width * 1.5, edge),
    box(0, -width / 2, range + nose * 0.4, width, width * 0.12, edge),
    polyline(
      [
        [range + nose * 0.4, -width * 0.4],
        [range + nose, -rod],
        [range + nose, rod],
        [range + nose * 0.4, width * 0.4],
      ],
      edge,
      'material',
      true,
    ),
    polyline(
      [
        [range + nose, -rod / 2],
        [reach - hook * 0.3, -rod / 2],
        [reach - hook * 0.3, -hook * 0.75],
        [reach, -hook * 0.75],
        [reach, rod / 2],
        [range + nose, rod / 2],
      ],
      gauge.hookUm === null ? 'notStated' : 'outline',
      'material',
      true,
    ),
    ...scale(from, to, range, width, options),
  ];
  const textUm = textHeight(shapes, options);
  if (options.dimensions) {
    const text = gauge.hookUm === null ? 'hook not stated' : `hook ${writeMm(gauge.hookUm)} mm`;
    shapes.push(
      words(
        reach,
        -hook - textUm * 1.1,
        text,
        textUm,
        gauge.hookUm === null ? 'notStated' : 'dimension',
        'end',
      ),
    );
    const reads = stated ? `measures ${writeMm(from)} to ${writeMm(to)} mm` : 'range not stated';
    shapes.push(
      words(range / 2, width / 2 + textUm * 1.4, reads, textUm, stated ? 'dimension' : 'notStated'),
    );
  }
  return compose({
    shapes,
    measures: [
      { name: 'from', um: gauge.fromUm },
      { name: 'to', um: gauge.toUm },
      { name: 'hook', um: gauge.hookUm },
    ],
  });
}

/** Lines every two millimetres, longer every ten; read towards the hook. */
function scale(from: number, to: number, range: number, width: number, options: DrawOptions): Shape[] {
  const shapes: Shape[] = [];
  const step = to - from > 120_000 ? 5_000 : 2_000;
  for (let um = Math.ceil(from / step) * step; um <= to; um += step) {
    const x = range - (um - from);
    const tall = um % 10_000 === 0;
    shapes.push(line(x, -width / 2, x, -width / 2 + width * (tall ? 0.55 : 0.3), 'fine'));
    if (tall && options.dimensions && um % 20_000 === 0)
      shapes.push(words(x, width * 0.24, writeMm(um), width * 0.36, 'label'));
  }
  return shapes;
}

export function drawDriver(driver: Driver, options: DrawOptions = {}): Scene {
  const tip = (driver.drive === null ? null : driveWidthUm(driver.drive)) ?? 3_000;
  const rod = Math.max(tip * 1.25, 3_000);
  const edge = driver.lengthUm === null ? 'notStated' : 'outline';
  const shown = shownLength(driver.lengthUm ?? rod * 30, rod, 18);
  const end = shown.lengthUm;
  const start = driver.fixedHandle ? Math.min(end * 0.4, rod * 7) : couplingLength(driver.coupling, rod);
  const neck = end - tip * 3;
  const shapes: Shape[] = [
    ...(driver.fixedHandle ? grip(start, start, rod * 2.6, edge) : shankEnd(driver.coupling, start, rod)),
    box(start, -rod / 2, neck - start, rod, 0, edge),
    polyline(
      [
        [neck, -rod / 2],
        [neck + tip * 0.8, -tip / 2],
        [end, -tip / 2],
        [end, tip / 2],
        [neck + tip * 0.8, tip / 2],
        [neck, rod / 2],
      ],
      driver.drive === null ? 'notStated' : edge,
      'material',
      true,
    ),
    line(neck + tip * 0.8, -tip * 0.22, end, -tip * 0.22, 'fine'),
    line(neck + tip * 0.8, tip * 0.22, end, tip * 0.22, 'fine'),
    line(-rod * 0.5, 0, end + rod * 0.5, 0, 'centre'),
  ];
  if (driver.holdsScrew)
    shapes.push(box(neck - rod * 0.6, -rod * 0.75, rod * 1.2, rod * 1.5, rod * 0.2, 'fine', 'material'));
  if (driver.cannulationUm !== null) {
    const half = driver.cannulationUm / 2;
    shapes.push(line(0, -half, end, -half, 'hidden'), line(0, half, end, half, 'hidden'));
  }
  if (shown.interrupted) shapes.push(...breakLines((start + neck) / 2, rod));
  // the tip cut across, twice its size for the eye would not be to scale: it stands as large as it is
  const x = end + rod * 1.6;
  shapes.push(
    ...centreCross(x, 0, tip * 0.8),
    ...driveMark(driver.drive, x, 0, tip * 1.2, 'outline', 'material'),
  );
  const textUm = textHeight(shapes, options);
  if (options.dimensions) shapes.push(...underneath(shapes, 0, end, { um: driver.lengthUm, textUm }));
  return compose({
    shapes,
    interrupted: shown.interrupted,
    measures: [{ name: 'length', um: driver.lengthUm }],
  });
}

/** A handle has no stated dimensions but the shanks it takes: its form is drawn, and its socket to scale. */
export function drawHandle(handle: Handle, options: DrawOptions = {}): Scene {
  const socket = handle.takes?.[0]?.sizeUm ?? 6_000;
  const edge = handle.takes === null ? 'notStated' : 'outline';
  const w = Math.max(socket * 3, 18_000);
  const shapes: Shape[] = [];
  if (handle.form === 'tShaped') {
    shapes.push(
      box(-w * 1.1, -w * 2, w, w * 4, w * 0.45),
      box(-w * 0.1, -w * 0.45, w * 1.6, w * 0.9, w * 0.1),
    );
  } else if (handle.form === 'power') {
    const pistol = trace(-w * 3, -w * 0.8)
      .to(w * 0.6, -w * 0.8)
      .to(w * 1.3, -w * 0.5)
      .to(w * 1.3, w * 0.5)
      .to(w * 0.6, w * 0.8)
      .to(-w * 0.8, w * 0.8)
      .to(-w * 1.2, w * 3.4)
      .to(-w * 2.7, w * 3.4)
      .to(-w * 2.3, w * 0.8)
      .to(-w * 3, w * 0.8)
      .close();
    shapes.push(
      drawn(pistol, 'outline', 'material'),
      line(w * 0.6, -w * 0.8, w * 0.6, w * 0.8, 'fine'),
      box(-w * 0.8, w * 1.1, w * 0.4, w * 0.8, w * 0.1, 'fine', 'void'),
    );
  } else {
    shapes.push(...grip(0, w * 4.2, w * 1.5), box(0, -w * 0.4, w * 1.2, w * 0.8, w * 0.1));
    if (handle.form === 'ratchet')
      shapes.push(
        box(w * 0.1, -w * 0.6, w * 0.55, w * 1.2, w * 0.08, 'outline'),
        ...[0.18, 0.32, 0.46, 0.6].map((part) => line(w * part, -w * 0.6, w * part, w * 0.6, 'fine')),
      );
  }
  const nose = handle.form === 'tShaped' ? w * 1.5 : handle.form === 'power' ? w * 1.3 : w * 1.2;
  shapes.push(
    line(nose - socket * 2, -socket / 2, nose, -socket / 2, edge === 'notStated' ? edge : 'hidden'),
    line(nose - socket * 2, socket / 2, nose, socket / 2, edge === 'notStated' ? edge : 'hidden'),
  );
  shapes.push(
    ...centreCross(nose + socket * 1.4, 0, socket * 0.8),
    circle(nose + socket * 1.4, 0, socket / 2, edge, 'void'),
  );
  const textUm = textHeight(shapes, options);
  if (options.dimensions) {
    const text =
      handle.takes === null
        ? 'shanks it takes: not stated'
        : `takes ${handle.takes.map(({ sizeUm }) => `${writeMm(sizeUm)} mm`).join(', ')}`;
    shapes.push(
      words(
        nose,
        -w * 0.8 - textUm * 1.4,
        text,
        textUm,
        handle.takes === null ? 'notStated' : 'dimension',
        'end',
      ),
    );
  }
  return compose({ shapes, measures: [{ name: 'socket', um: handle.takes?.[0]?.sizeUm ?? null }] });
}

export function drawLimiter(limiter: TorqueLimiter, options: DrawOptions = {}): Scene {
  const size = limiter.coupling?.sizeUm ?? 6_000;
  const body = Math.max(size * 2.4, 14_000);
  const start = limiter.fixedHandle ? 0 : couplingLength(limiter.coupling, size);
  const socket = limiter.takes?.[0]?.sizeUm ?? 6_000;
  const shapes: Shape[] = [
    ...(limiter.fixedHandle ? grip(0, body * 3, body * 1.3) : shankEnd(limiter.coupling, start, size)),
    box(start, -body / 2, body * 2, body, body * 0.1),
    ...[0.3, 0.45, 0.6].map((part) =>
      line(start + body * part, -body / 2, start + body * part, body / 2, 'fine'),
    ),
    box(
      start + body * 2,
      -socket,
      body * 0.7,
      socket * 2,
      socket * 0.15,
      limiter.takes === null ? 'notStated' : 'outline',
    ),
    line(start + body * 2, -socket / 2, start + body * 2.7, -socket / 2, 'hidden'),
    line(start + body * 2, socket / 2, start + body * 2.7, socket / 2, 'hidden'),
    // the clutch: a ring whose arrow says it lets go
    drawn(
      trace(start + body * 1.15, -body * 0.2)
        .arc(start + body * 1.55, body * 0.15, body * 0.26, true)
        .open(),
      'fine',
    ),
    arrowHead(start + body * 1.55, body * 0.15, -0.2, 1, body * 0.16),
  ];
  const textUm = textHeight(shapes, options);
  const value = limiter.torqueNmm === null ? 'torque not stated' : `${limiter.torqueNmm / 1000} N m`;
  if (options.dimensions)
    shapes.push(
      words(
        start + body,
        -body / 2 - textUm * 1.3,
        value,
        textUm,
        limiter.torqueNmm === null ? 'notStated' : 'dimension',
      ),
    );
  return compose({
    shapes,
    measures: [
      { name: 'shank', um: limiter.coupling?.sizeUm ?? null },
      { name: 'socket', um: limiter.takes?.[0]?.sizeUm ?? null },
    ],
  });
}
