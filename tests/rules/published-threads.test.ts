import { describe, expect, it } from 'vitest';
import { createFitEngine } from '@/lib/fit/engine';
import { DEFAULT_FIT_SETTINGS } from '@/lib/fit/rule';
import { micronsFromMm } from '@/lib/quantities/length';
import { starterRules } from '@/seed/rules';
import published from '../fixtures/screw-threads.json';
import {
  bit,
  corticalScrew,
  driver,
  lockingScrew,
  partlyThreadedScrew,
  sleeve,
  threadedSleeve,
} from './pieces';

/** Source and what of it was seen, or is from memory: tests/fixtures/screw-threads.json. */
const engine = createFitEngine({ rules: starterRules, exceptions: [], settings: DEFAULT_FIT_SETTINGS });

const rows = published.rows.map((row) => {
  const um = (mm: number | undefined) => (mm === undefined ? null : micronsFromMm(mm));
  const partly = row.code.startsWith('HB');
  const make = partly ? partlyThreadedScrew : corticalScrew;
  const screw = make({
    threadForm: partly ? 'HB' : 'HA',
    threadUm: um(row.threadMm),
    coreUm: um(row.coreMm),
    shaftUm: um(row.shaftMm),
    headUm: um(row.headMm),
    drive: { form: 'hexagonSocket', acrossFlatsUm: micronsFromMm(row.hexMm) },
  });
  return { ...row, screw, um };
});
const pilots = (mm: number, screw: (typeof rows)[number]['screw'], lessUm = 0) =>
  engine.ask({ relation: 'pilots', bit: bit(micronsFromMm(mm) - lessUm), screw });

describe('published threads and drills (ISO 5835; open teaching tables)', () => {
  it.each(rows)(
    '$code: the published pilot drills its thread hole, without a caution',
    ({ pilotMm, screw }) => {
      const verdict = pilots(pilotMm, screw);
      expect(verdict.outcome).toBe('fits');
      expect(
        verdict.findings.filter(({ severity, answer }) => severity !== 'note' && answer !== 'met'),
      ).toEqual([]);
    },
  );

  it.each(rows)(
    '$code: a bit of the thread’s size leaves the thread nothing to hold',
    ({ threadMm, screw }) => {
      expect(pilots(threadMm, screw).outcome).toBe('doesNotFit');
    },
  );

  it.each(rows)('$code: a bit below the core does not pilot', ({ coreMm, screw }) => {
    expect(pilots(coreMm, screw, 100).outcome).toBe('doesNotFit');
  });

  it.each(rows.filter((row) => row.glideMm !== undefined))(
    '$code: the published gliding bit, and no other, drills its gliding hole',
    ({ screw, glideMm }) => {
      const gliding = rows.filter(
        (other) =>
          other.glideMm !== undefined &&
          engine.ask({ relation: 'glides', bit: bit(micronsFromMm(other.glideMm)), screw }).outcome ===
            'fits',
      );
      expect(gliding.map((other) => other.glideMm)).toContain(glideMm);
      expect(new Set(gliding.map((other) => other.glideMm)).size).toBe(1);
    },
  );

  it.each(rows)('$code: only the hexagon of its size turns it', ({ hexMm, screw }) => {
    for (const size of [1.5, 2.5, 3.5]) {
      const turns = engine.ask({
        relation: 'turns',
        driver: driver({ drive: { form: 'hexagonSocket', acrossFlatsUm: micronsFromMm(size) } }),
        screw,
      });
      expect(turns.outcome).toBe(size === hexMm ? 'fits' : 'doesNotFit');
    }
  });

  it('HB 4.0 has no shaft published: its gliding hole is not established', () => {
    const row = rows.find(({ code }) => code === 'HB 4.0');
    if (!row) throw new Error('HB 4.0 is in the table');
    const verdict = engine.ask({ relation: 'glides', bit: bit(4000), screw: row.screw });
    expect(verdict.outcome).toBe('notEstablished');
    expect(verdict.findings.flatMap(({ missing }) => missing)).toEqual(['screw.shaftUm']);
  });
});

describe('worked example B1: bits and sleeves for a locking 3.5 (pilot 2.8: common practice, no source)', () => {
  const pilot = bit(2800);

  it('2.8 pilots the locking screw', () => {
    expect(engine.ask({ relation: 'pilots', bit: pilot, screw: lockingScrew() }).outcome).toBe('fits');
  });

  it('the plain 2.5 bore is too small for the 2.8 bit', () => {
    const verdict = engine.ask({ relation: 'passes', tool: pilot, by: sleeve({ boreUm: 2500 }) });
    const broken = verdict.findings.filter(({ answer }) => answer === 'notMet');
    expect(verdict.outcome).toBe('doesNotFit');
    expect(broken.map(({ sentence }) => sentence)).toEqual(['The 2.5 mm bore is too small for 2.8 mm.']);
  });

  it('the plain 3.5 bore is loose by 0.7 > 0.2', () => {
    const verdict = engine.ask({ relation: 'passes', tool: pilot, by: sleeve({ boreUm: 3500 }) });
    const broken = verdict.findings.filter(({ answer }) => answer === 'notMet');
    expect(verdict.outcome).toBe('doesNotFit');
    expect(broken.map(({ from }) => (from.kind === 'rule' ? from.code : from.kind))).toEqual([
      'bore-not-too-loose',
    ]);
  });

  it('the threaded sleeve passes it', () => {
    expect(engine.ask({ relation: 'passes', tool: pilot, by: threadedSleeve() }).outcome).toBe('fits');
  });
});
