import Ajv from 'ajv';
import draft6 from 'ajv/dist/refs/json-schema-draft-06.json';
import { official } from './official';

// the published expression for decimals has a brace too many, which only the older reading of expressions lets stand
const ajv = new Ajv({ strict: false, validateFormats: false, unicodeRegExp: false });
ajv.addMetaSchema(draft6);
ajv.addSchema({
  $id: 'fhir',
  $schema: 'http://json-schema.org/draft-06/schema#',
  definitions: official('schema'),
});

/** Whether a resource is as the official JSON Schema of FHIR R5 has it, which says less than the StructureDefinitions do. */
export function fitsSchema(resource: { resourceType: string }): boolean {
  const fits = ajv.getSchema(`fhir#/definitions/${resource.resourceType}`);
  if (!fits) throw new Error(`the extract has no ${resource.resourceType}`);
  return fits(resource) === true;
}
