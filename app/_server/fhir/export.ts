import type { Reading } from '@/db/reader';
import { urlOf } from '@/lib/fhir/bundle';
import type { Frame } from '@/lib/fhir/frame';
import { OFFERED_TYPES, type OfferedType } from '@/lib/fhir/offered';
import { everyPage } from './answers';

/** One resource a line, as HL7's bulk data has it (hl7.org/fhir/uv/bulkdata): one type a file. */
export async function* resourceLines(db: Reading, frame: Frame, type: OfferedType): AsyncGenerator<string> {
  for await (const resources of everyPage(db, frame, type))
    yield resources.map((resource) => `${JSON.stringify(resource)}\n`).join('');
}

/** A Bundle of the kind `collection` with everything of the types, written entry by entry. */
export async function* collection(
  db: Reading,
  frame: Frame,
  types: readonly OfferedType[] = OFFERED_TYPES,
): AsyncGenerator<string> {
  yield `{"resourceType":"Bundle","type":"collection","timestamp":${JSON.stringify(frame.now)}`;
  let before = ',"entry":[\n';
  for (const type of types)
    for await (const resources of everyPage(db, frame, type)) {
      if (resources.length === 0) continue;
      const entries = resources.map((resource) =>
        JSON.stringify({ fullUrl: urlOf(frame, resource), resource }),
      );
      yield before + entries.join(',\n');
      before = ',\n';
    }
  // R5 has no empty lists
  yield before === ',\n' ? '\n]}\n' : '}\n';
}
