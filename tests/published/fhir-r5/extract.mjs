// Cuts out of the official FHIR R5 packages what the tests of `lib/fhir` check against, so that nobody has to install 270 MB:
//
//   npm pack hl7.fhir.r5.core@5.0.0 hl7.fhir.r5.examples@5.0.0 hl7.fhir.r5.expansions@5.0.0   (unpack each beside the others)
//   node tests/published/fhir-r5/extract.mjs FOLDER
//
// FOLDER holds the three archives and, unpacked, core/package, examples/package and expansions/package. Nothing is changed but
// what is left out: prose, and what the ten types below do not lead to. HL7 FHIR is published under CC0 1.0.

import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const [, , folder] = process.argv;
if (!folder) throw new Error('name the folder with the unpacked packages');
const here = fileURLToPath(new URL('.', import.meta.url));
const read = (path) => JSON.parse(readFileSync(join(folder, path), 'utf8'));

const CHECKED = [
  'Bundle',
  'CapabilityStatement',
  'Device',
  'DeviceDefinition',
  'DeviceUsage',
  'InventoryItem',
  'InventoryReport',
  'OperationOutcome',
  'SupplyDelivery',
  'SupplyRequest',
];
/** Contained in an official example of a delivery. */
const CONTAINED = ['BiologicallyDerivedProduct'];
const RESOURCES = [...CHECKED, ...CONTAINED];
/** The seven whose examples are all taken; of the other three those that hold no resource of another type. */
const EXAMPLES_OF =
  /^(Device|DeviceDefinition|DeviceUsage|InventoryItem|InventoryReport|SupplyDelivery|SupplyRequest|OperationOutcome|CapabilityStatement)-/;
const EXAMPLES_TOO_LARGE = ['CapabilityStatement-base.json'];

/** One entry a line, so that a change can be read. */
function write(name, entries) {
  const lines = entries.map(([key, value]) => `${JSON.stringify(key)}: ${JSON.stringify(value)}`);
  writeFileSync(join(here, name), `{\n${lines.join(',\n')}\n}\n`);
}
const sorted = (object) => Object.entries(object).sort(([a], [b]) => (a < b ? -1 : 1));

// the official JSON Schema
const schema = read('core/package/openapi/fhir.schema.json');
const withoutProse = (value) => {
  if (Array.isArray(value)) return value.map(withoutProse);
  if (value === null || typeof value !== 'object') return value;
  // a property may be called `description`; then it is a schema and no text
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key, one]) => key !== 'description' || typeof one !== 'string')
      .map(([key, one]) => [key, withoutProse(one)]),
  );
};
const definitions = {
  ResourceList: { oneOf: RESOURCES.map((type) => ({ $ref: `#/definitions/${type}` })) },
};
const wanted = [...RESOURCES];
for (let name = wanted.pop(); name !== undefined; name = wanted.pop()) {
  if (name in definitions) continue;
  definitions[name] = withoutProse(schema.definitions[name]);
  for (const [, next] of JSON.stringify(definitions[name]).matchAll(/#\/definitions\/(\w+)/g))
    wanted.push(next);
}
write('schema.json', sorted(definitions));

// the StructureDefinitions
const structures = {};
const valueSets = new Set();
const types = [...RESOURCES, 'xhtml'];
const REGEX = 'http://hl7.org/fhir/StructureDefinition/regex';
const FHIR_TYPE = 'http://hl7.org/fhir/StructureDefinition/structuredefinition-fhir-type';
const ofExtension = (type, url) => type.extension?.find((one) => one.url === url);
for (let name = types.pop(); name !== undefined; name = types.pop()) {
  if (name in structures) continue;
  const { kind, snapshot } = read(`core/package/StructureDefinition-${name}.json`);
  structures[name] = {
    kind,
    elements: snapshot.element.map((element) => {
      const own = (element.type ?? []).map((type) => {
        const fhirType = ofExtension(type, FHIR_TYPE)?.valueUrl;
        const code = fhirType ?? type.code;
        if (!code.startsWith('http')) types.push(code);
        const regex = ofExtension(type, REGEX)?.valueString;
        return {
          code,
          ...(type.targetProfile && { targets: type.targetProfile.map((one) => one.split('/').at(-1)) }),
          ...(regex && { regex }),
        };
      });
      const required = element.binding?.strength === 'required' ? element.binding.valueSet : undefined;
      if (required) valueSets.add(required);
      const rules = (element.constraint ?? [])
        // `ele-1`, that no element is empty, stands at every element and is checked without it
        .filter(({ severity, key }) => severity === 'error' && key !== 'ele-1')
        .map(({ key, expression }) => ({ key, expression }));
      return {
        path: element.path,
        min: element.min,
        max: element.max,
        ...(own.length > 0 && { types: own }),
        ...(element.contentReference && { like: element.contentReference.split('#').at(-1) }),
        ...(required && { required }),
        ...(rules.length > 0 && { rules }),
      };
    }),
  };
}
write('structures.json', sorted(structures));

// the codes of value sets that are required; those without an end (media types, languages) stay `null`
write(
  'value-sets.json',
  [...valueSets].sort().map((url) => {
    const path = `expansions/package/ValueSet-${url.split('|')[0].split('/').at(-1)}.json`;
    const contains = existsSync(join(folder, path)) ? (read(path).expansion?.contains ?? []) : [];
    const flat = (list) => list.flatMap((one) => [one, ...flat(one.contains ?? [])]);
    const codes = flat(contains).map(({ system, code }) => `${system}|${code}`);
    return [url, codes.length > 0 ? codes : null];
  }),
);

// search parameters of the seven types
const parameters = readdirSync(join(folder, 'core/package'))
  .filter((name) => name.startsWith('SearchParameter-'))
  .map((name) => read(`core/package/${name}`))
  // the package has an example or two among them
  .filter(({ url }) => !url.includes('/SearchParameter/example'));
write(
  'search-parameters.json',
  [...CHECKED, 'Resource'].flatMap((type) =>
    parameters
      .filter(({ base }) => base.includes(type))
      .map((one) => [`${type} ${one.code}`, { url: one.url, type: one.type }])
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  ),
);

// the official examples, without their narrative
const examples = readdirSync(join(folder, 'examples/package'))
  .filter((name) => EXAMPLES_OF.test(name) && !EXAMPLES_TOO_LARGE.includes(name))
  .map((name) => {
    const { text: _narrative, ...example } = read(`examples/package/${name}`);
    return [name.replace(/\.json$/, ''), example];
  });
write('examples.json', examples);

const hash = (path) =>
  createHash('sha512')
    .update(readFileSync(join(folder, path)))
    .digest('base64');
const { version, license, date } = read('core/package/package.json');
write('source.json', [
  ['publisher', 'HL7 International'],
  ['version', version],
  ['date', date],
  ['licence', license],
  [
    'packages',
    ['core', 'examples', 'expansions'].map((name) => ({
      name: `hl7.fhir.r5.${name}@5.0.0`,
      integrity: `sha512-${hash(`hl7.fhir.r5.${name}-5.0.0.tgz`)}`,
    })),
  ],
]);
