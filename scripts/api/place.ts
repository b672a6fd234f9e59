/** Where the description of the API is kept, from the root of the repository. */
export const DOCUMENT_PLACE = 'app/api-docs/openapi.json';
