import { NotStated } from '@/app/_ui/not-stated';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { HAS_PLAIN_ZONE, type Hole } from '@/lib/catalogue/hole';
import type { SleeveEnd } from '@/lib/catalogue/item';
import { writeMm } from '@/lib/quantities/length';
import {
  DRILLING_POSITION_WORDS,
  HOLE_CLASS_WORDS,
  OUTER_FORM_WORDS,
  PLAIN_SEAT_WORDS,
  SLEEVE_SEAT_WORDS,
} from '@/lib/wording/catalogue';
import styles from './detail.module.css';

/** The holes of a plate, one a row, in millimetres. */
export function HoleTable({ holes }: { holes: readonly Hole[] }) {
  return (
    <ScrollRegion label="Holes of the plate">
      <table className={styles.table}>
        <caption className={styles.note}>
          Millimetres: along from the shaft end, across to the plate’s left.
        </caption>
        <thead>
          <tr>
            <th scope="col">Hole</th>
            <th scope="col">Class</th>
            <th scope="col" className={styles.end}>
              Along
            </th>
            <th scope="col" className={styles.end}>
              Across
            </th>
            <th scope="col" className={styles.end}>
              Opening
            </th>
            <th scope="col" className={styles.end}>
              Seat
            </th>
            <th scope="col" className={styles.end}>
              Slot
            </th>
            <th scope="col">Tilt</th>
            <th scope="col">Seat form, locking family</th>
          </tr>
        </thead>
        <tbody>
          {holes.map((hole) => (
            <tr key={hole.id}>
              <th scope="row">{hole.id}</th>
              <td>{HOLE_CLASS_WORDS[hole.holeClass]}</td>
              <td className={styles.end}>{writeMm(hole.alongUm)}</td>
              <td className={styles.end}>{writeMm(hole.acrossUm)}</td>
              <td className={styles.end}>
                {hole.openingUm === null && !HAS_PLAIN_ZONE[hole.holeClass] && hole.holeClass !== 'wireHole'
                  ? '–'
                  : mm(hole.openingUm)}
              </td>
              <td className={styles.end}>{hole.seatUm === null ? '–' : writeMm(hole.seatUm)}</td>
              <td className={styles.end}>{hole.slotUm === null ? '–' : writeMm(hole.slotUm)}</td>
              <td>{tiltWords(hole)}</td>
              <td>
                {[hole.plainSeat === null ? null : PLAIN_SEAT_WORDS[hole.plainSeat], hole.lockingFamily]
                  .filter(Boolean)
                  .join(', ') || '–'}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function tiltWords(hole: Hole): string {
  const parts = [
    hole.tiltAlongDegrees === 0 ? null : `${hole.tiltAlongDegrees}° along`,
    hole.tiltAcrossDegrees === 0 ? null : `${hole.tiltAcrossDegrees}° across`,
  ].filter(Boolean);
  return parts.length === 0 ? 'upright' : parts.join(', ').replaceAll('-', '−');
}

function mm(um: number | null) {
  return um === null ? <NotStated /> : writeMm(um);
}

/** The ends of a sleeve, one a row. */
export function EndTable({ ends }: { ends: readonly SleeveEnd[] }) {
  return (
    <ScrollRegion label="Ends of the sleeve">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">End</th>
            <th scope="col" className={styles.end}>
              Bore mm
            </th>
            <th scope="col" className={styles.end}>
              Outside mm
            </th>
            <th scope="col">Outer form</th>
            <th scope="col">Sits on</th>
            <th scope="col">Positions</th>
            <th scope="col">Locking family</th>
          </tr>
        </thead>
        <tbody>
          {ends.map((end, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: an end is known by its place
            <tr key={index}>
              <th scope="row">{index + 1}</th>
              <td className={styles.end}>{mm(end.boreUm)}</td>
              <td className={styles.end}>{mm(end.outerUm)}</td>
              <td>{end.outerForm === null ? <NotStated /> : OUTER_FORM_WORDS[end.outerForm]}</td>
              <td>
                {end.seatsOn === null ? (
                  <NotStated />
                ) : (
                  end.seatsOn.map((seat) => SLEEVE_SEAT_WORDS[seat]).join(', ')
                )}
              </td>
              <td>
                {end.positions === null ? (
                  <NotStated />
                ) : (
                  end.positions.map((position) => DRILLING_POSITION_WORDS[position]).join(', ')
                )}
              </td>
              <td>{end.lockingFamily ?? (end.outerForm === 'threaded' ? <NotStated /> : '–')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}
