import { prepareZXingModule, type ReadResult, readBarcodes } from 'zxing-wasm/reader';

let ready: Promise<void> | null = null;

/** Fetches the reader from our own server, once. */
export function prepareReader(): Promise<void> {
  ready ??= (async () => {
    const answer = await fetch('/scan/reader.wasm');
    if (!answer.ok) throw new Error(String(answer.status));
    const wasmBinary = await answer.arrayBuffer();
    await prepareZXingModule({ overrides: { wasmBinary }, fireImmediately: true });
  })().catch((error: unknown) => {
    ready = null;
    throw error;
  });
  return ready;
}

/** The codes in a picture, each as a scanner that sends everything would type it: mark first, separators as they are. */
export async function codesIn(picture: ImageData): Promise<string[]> {
  const found = await readBarcodes(picture, {
    formats: ['DataMatrix', 'QRCode', 'Code128', 'EAN13', 'EAN8', 'ITF', 'Code39', 'DataBar', 'Aztec'],
    tryHarder: true,
    maxNumberOfSymbols: 4,
  });
  return found.filter(({ isValid }) => isValid).map(textOf);
}

/** Separators are only in the bytes: the text has them as brackets or not at all. */
function textOf({ bytes, symbologyIdentifier }: ReadResult): string {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    text = new TextDecoder('latin1').decode(bytes);
  }
  return symbologyIdentifier + text;
}
