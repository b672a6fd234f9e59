import { describeCalculation } from '@/lib/calculations/description';
import { calculations } from '@/lib/calculations/registry';

/** All calculations, each with its input and output as JSON Schema. */
export function GET(): Response {
  return Response.json({ calculations: Object.values(calculations).map(describeCalculation) });
}
