import { describedApi } from '@/app/_server/described-api';
import { jsonAnswer } from '@/app/_server/json-answer';

/** A document of OpenAPI 3.1. */
interface DescribedDocument {
  openapi: string;
  paths: object;
}

/** This description, as OpenAPI 3.1 has it. */
export function GET() {
  return jsonAnswer(describedApi() as DescribedDocument);
}
