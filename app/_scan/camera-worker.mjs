// Runs in the browser, in a worker of its own, after the package that reads symbols (`app/scan/reader.js/route.ts`).
/* global ZXingWASM */

const FORMATS = ['DataMatrix', 'QRCode', 'Code128', 'EAN13', 'EAN8', 'ITF', 'Code39', 'DataBar', 'Aztec'];

const prepared = (async () => {
  const answer = await fetch('/scan/reader.wasm');
  if (!answer.ok) throw new Error(String(answer.status));
  const wasmBinary = await answer.arrayBuffer();
  await ZXingWASM.prepareZXingModule({ overrides: { wasmBinary }, fireImmediately: true });
})();
prepared.then(
  () => postMessage({ ready: true }),
  () => postMessage({ ready: false }),
);

addEventListener('message', async ({ data: { id, picture } }) => {
  try {
    await prepared;
    const found = await ZXingWASM.readBarcodes(picture, {
      formats: FORMATS,
      tryHarder: true,
      maxNumberOfSymbols: 4,
    });
    const codes = found
      .filter(({ isValid }) => isValid)
      .map(({ bytes, symbologyIdentifier }) => ({ bytes, symbologyIdentifier }));
    postMessage({ id, codes });
  } catch {
    postMessage({ id, codes: [] });
  }
});
