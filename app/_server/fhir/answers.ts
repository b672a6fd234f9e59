import { setImmediate } from 'node:timers/promises';
import type { Reading } from '@/db/reader';
import { searchset } from '@/lib/fhir/bundle';
import type { Resource } from '@/lib/fhir/datatypes';
import type { Frame } from '@/lib/fhir/frame';
import { isOffered, type OfferedType } from '@/lib/fhir/offered';
import { type OperationOutcome, operationOutcome } from '@/lib/fhir/operationOutcome';
import { AFTER, parseSearch, type Search } from '@/lib/fhir/search';
import { fhirProblemWords as words } from '@/lib/wording/fhir';
import { isNextOf, PAGES, type ResourcePage } from './pages';

/** What is answered: a resource, and with which status of HTTP. */
export interface Answer {
  status: 200 | 400 | 404 | 406;
  body: Resource | OperationOutcome;
}

const refused = (status: 400 | 404 | 406, name: string | null, code: string, message: string): Answer => ({
  status,
  body: operationOutcome([{ path: name === null ? [] : [name], code, message }]),
});

/** What is asked at an address of the service that it has not: a history, an operation, the service itself. */
export const noSuchInteraction: Answer = refused(404, null, 'not-supported', words.noSuchInteraction);

/** FHIR asks for a format in the address or in the header; JSON alone is offered (hl7.org/fhir/R5/http.html#mime-type). */
export function otherFormat(request: Pick<Request, 'url' | 'headers'>): Answer | null {
  const asked = new URL(request.url).searchParams.get('_format') ?? request.headers.get('accept') ?? '*/*';
  const isJson = /(^|[\s,;+/])(json|\*)(\s*[;,]|\s*$)/i.test(asked);
  return isJson ? null : refused(406, null, 'not-supported', words.onlyJson);
}

/** `GET Type?…`: a page of what is looked for, with the address of the next. */
export async function answerSearch(
  db: Reading,
  frame: Frame,
  { type, params }: { type: string; params: URLSearchParams },
): Promise<Answer> {
  if (!isOffered(type)) return refused(404, null, 'not-supported', words.noSuchType(type));
  const parsed = parseSearch(type, params);
  if (!parsed.ok) return { status: 400, body: operationOutcome(parsed.problems) };
  const { search } = parsed;
  if (search.after !== null && !isNextOf(type, search.after))
    return refused(400, AFTER, 'value', words.notANext);
  const { resources, next } = await PAGES[type](db, frame, search);
  const address = (after: string | null) => {
    const query = new URLSearchParams(params);
    query.delete(AFTER);
    if (after !== null) query.set(AFTER, after);
    return `${frame.base}/${type}${query.size > 0 ? `?${query}` : ''}`;
  };
  return {
    status: 200,
    body: searchset(frame, resources, {
      self: address(search.after),
      next: next === null ? null : address(next),
    }),
  };
}

/** `GET Type/id` */
export async function answerRead(
  db: Reading,
  frame: Frame,
  { type, id }: { type: string; id: string },
): Promise<Answer> {
  if (!isOffered(type)) return refused(404, null, 'not-supported', words.noSuchType(type));
  const search: Search = {
    tokens: { _id: [{ system: null, code: id }] },
    strings: {},
    dates: {},
    count: 1,
    after: null,
  };
  const { resources } = await PAGES[type](db, frame, search);
  const [found] = resources;
  return found
    ? { status: 200, body: found }
    : refused(404, null, 'not-found', words.noSuchResource(type, id));
}

/** Every resource of a type, page by page: what is held at once is bounded, and others are served between pages. */
export async function* everyPage(db: Reading, frame: Frame, type: OfferedType): AsyncGenerator<Resource[]> {
  for (let after: string | null = null, isFirst = true; isFirst || after !== null; isFirst = false) {
    const search: Search = { tokens: {}, strings: {}, dates: {}, count: EXPORT_PAGE, after };
    const { resources, next }: ResourcePage = await PAGES[type](db, frame, search);
    yield resources;
    after = next;
    await setImmediate();
  }
}

/** Small, because the database is read in one go: in between, other requests take their turn. */
const EXPORT_PAGE = 100;
