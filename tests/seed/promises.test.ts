import { describe, expect, it } from 'vitest';
import { keptCatalogue } from '@/db/queries/caseKit';
import { loadFitEngine } from '@/db/queries/fitRules';
import { itemId } from '@/lib/identity/ids';
import { planKit } from '@/lib/kits/caseKit';
import { DEFAULT_KIT_SETTINGS } from '@/lib/kits/settings';
import type { StoredSet } from '@/lib/kits/store';
import { plainDate } from '@/lib/quantities/plainDate';
import { CONFIGURATIONS } from '@/seed/configurations/configurations';
import { type ConfigurationPlan, linesOf, type VersionPlan } from '@/seed/configurations/layout';
import { demoDatabase } from '../setup/database';

/** One set of a version, whole, alone in the store. */
function wholeSet({ code }: ConfigurationPlan, version: VersionPlan): StoredSet {
  return {
    id: `set_${code.toLowerCase()}` as StoredSet['id'],
    code,
    configurationId: `configuration_${code.toLowerCase()}` as StoredSet['configurationId'],
    configurationName: code,
    step: 'inSterileStore',
    heldBecause: null,
    readyAt: null,
    useBy: null,
    place: null,
    massGrams: null,
    promisedTo: [],
    contents: linesOf(code, version).map((line) => ({
      itemId: itemId.parse(line.itemId),
      found: line.expected,
      expected: line.expected,
      mustHaveClass: line.mustHaveClass,
    })),
  };
}

describe('what configurations promise', () => {
  const promised = CONFIGURATIONS.flatMap((configuration) =>
    configuration.versions.flatMap((version) =>
      version.promises.map((promise) => ({
        configuration,
        version,
        promise,
        label: `${configuration.code} ${version.version}: ${promise.name}`,
      })),
    ),
  );

  it.each(promised)(
    '$label can be built from a whole set alone',
    async ({ configuration, version, promise }) => {
      const db = await demoDatabase();
      const kit = await planKit({
        construct: promise.construct,
        caseDate: plainDate.parse('2026-01-15'),
        needBy: null,
        store: { sets: [wholeSet(configuration, version)], packs: [] },
        catalogue: await keptCatalogue(db),
        engine: await loadFitEngine(db),
        settings: DEFAULT_KIT_SETTINGS,
        solver: null,
        lengthCover: 'none',
      });
      expect(kit.faults).toEqual([]);
      expect(kit.shorts.filter((short) => short.kind === 'piece' || short.importance === 'mustHave')).toEqual(
        [],
      );
      expect(kit.buildable).toBe('yes');
    },
  );
});
