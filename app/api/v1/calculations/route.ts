import { jsonAnswer } from '@/app/_server/json-answer';
import { describeCalculation } from '@/lib/calculations/description';
import { calculations } from '@/lib/calculations/registry';

/** All calculations, each with its input and output as JSON Schema. */
export function GET() {
  return jsonAnswer({ calculations: Object.values(calculations).map(describeCalculation) });
}
