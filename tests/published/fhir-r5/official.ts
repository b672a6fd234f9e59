import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** One file of the extract of HL7’s packages. Read and not imported: the compiler has no use for the types of half a megabyte. */
export function official<T>(
  name: 'examples' | 'schema' | 'search-parameters' | 'structures' | 'value-sets',
): T {
  return JSON.parse(readFileSync(join(process.cwd(), 'tests/published/fhir-r5', `${name}.json`), 'utf8'));
}
