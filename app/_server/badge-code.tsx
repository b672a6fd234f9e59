import 'server-only';
import bwipjs from 'bwip-js/node';

/** A badge as a DataMatrix (ISO/IEC 16022, ECC 200) with its quiet zone, to be scanned from a card. */
export function BadgeCode({
  code,
  label,
  className,
}: {
  code: string;
  label: string;
  className?: string | undefined;
}) {
  const [raw] = bwipjs.raw({ bcid: 'datamatrix', text: code }) as unknown as {
    pixs: number[];
    pixx: number;
    pixy: number;
  }[];
  if (!raw) throw new Error('no symbol was made');
  const { pixs, pixx, pixy } = raw;
  const dark = Array.from(pixs).flatMap((module, at) =>
    module === 1 ? [`M${at % pixx} ${Math.floor(at / pixx)}h1v1h-1z`] : [],
  );
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`-1 -1 ${pixx + 2} ${pixy + 2}`}
      shapeRendering="crispEdges"
      className={className}
    >
      <path d={dark.join('')} fill="#000" />
    </svg>
  );
}
