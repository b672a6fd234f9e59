/** A picture in greys: 0 is black, 255 is white, row by row from the top. */
export interface Picture {
  width: number;
  height: number;
  greys: Uint8ClampedArray;
}

/** From red, green, blue and alpha, by the luma weights of ITU-R BT.601. */
export function pictureFrom(rgba: ArrayLike<number>, width: number, height: number): Picture {
  const greys = new Uint8ClampedArray(width * height);
  for (let at = 0; at < greys.length; at += 1) {
    greys[at] =
      0.299 * (rgba[at * 4] ?? 0) + 0.587 * (rgba[at * 4 + 1] ?? 0) + 0.114 * (rgba[at * 4 + 2] ?? 0);
  }
  return { width, height, greys };
}

/** Only black and white, as a printer or copier without greys makes of it. */
export function threshold({ greys, ...size }: Picture, level: number): Picture {
  return { ...size, greys: greys.map((grey) => (grey < level ? 0 : 255)) };
}

/** Each dot the mean of the square about it: the optics of a copier out of focus. */
export function blur({ width, height, greys }: Picture, radius: number): Picture {
  const blurred = new Uint8ClampedArray(greys.length);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      let sum = 0;
      let count = 0;
      for (let dy = -radius; dy <= radius; dy += 1) {
        for (let dx = -radius; dx <= radius; dx += 1) {
          const [px, py] = [x + dx, y + dy];
          if (px < 0 || py < 0 || px >= width || py >= height) continue;
          sum += greys[py * width + px] ?? 255;
          count += 1;
        }
      }
      blurred[y * width + x] = sum / count;
    }
  }
  return { width, height, greys: blurred };
}

/** The part that begins there. */
export function crop(picture: Picture, left: number, top: number, width: number, height: number): Picture {
  const greys = new Uint8ClampedArray(width * height);
  for (let y = 0; y < height; y += 1) {
    const from = (top + y) * picture.width + left;
    greys.set(picture.greys.subarray(from, from + width), y * width);
  }
  return { width, height, greys };
}
