/** The bytes of a file as they are, in a form JSON can carry. */
export async function fileAsBase64(file: File): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const part = 0x8000;
  let text = '';
  // in parts: all bytes as arguments of one call are too many
  for (let at = 0; at < bytes.length; at += part)
    text += String.fromCharCode(...bytes.subarray(at, at + part));
  return btoa(text);
}
