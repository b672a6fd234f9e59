/** Our own worker, fetched from our own server: it compiles the reader, and pages need not be allowed to. */
const WORKER = '/scan/reader.js';

interface Symbol {
  bytes: Uint8Array;
  symbologyIdentifier: string;
}
type Answer = { ready: boolean } | { id: number; codes: Symbol[] };

let ready: Promise<Worker> | null = null;
let asked = 0;

/** Fetches the reader from our own server, once. */
export function prepareReader(): Promise<Worker> {
  ready ??= begin().catch((error: unknown) => {
    ready = null;
    throw error;
  });
  return ready;
}

function begin(): Promise<Worker> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(WORKER);
    const fail = () => {
      worker.terminate();
      reject(new Error('the reader could not be had'));
    };
    worker.addEventListener('error', fail, { once: true });
    const hear = ({ data }: MessageEvent<Answer>) => {
      if (!('ready' in data)) return;
      worker.removeEventListener('message', hear);
      if (data.ready) resolve(worker);
      else fail();
    };
    worker.addEventListener('message', hear);
  });
}

/** The codes in a picture, each as a scanner that sends everything would type it: mark first, separators as they are. */
export async function codesIn(picture: ImageData): Promise<string[]> {
  const worker = await prepareReader();
  asked += 1;
  const id = asked;
  const symbols = await new Promise<Symbol[]>((resolve) => {
    const hear = ({ data }: MessageEvent<Answer>) => {
      if (!('id' in data) || data.id !== id) return;
      worker.removeEventListener('message', hear);
      resolve(data.codes);
    };
    worker.addEventListener('message', hear);
    worker.postMessage({ id, picture }, [picture.data.buffer]);
  });
  return symbols.map(textOf);
}

/** Separators are only in the bytes: the text has them as brackets or not at all. */
function textOf({ bytes, symbologyIdentifier }: Symbol): string {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    text = new TextDecoder('latin1').decode(bytes);
  }
  return symbologyIdentifier + text;
}
