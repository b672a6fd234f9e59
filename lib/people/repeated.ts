/** The same few characters again and again, or one step up or down each time. */
export function isRepeated(text: string): boolean {
  const longest = Math.min(4, Math.floor(text.length / 2));
  for (let period = 1; period <= longest; period += 1) {
    if ([...text].every((character, at) => character === text[at % period])) return true;
  }
  return isRun(text);
}

function isRun(text: string): boolean {
  const steps = [...text].slice(1).map((character, at) => character.charCodeAt(0) - text.charCodeAt(at));
  return steps.length > 0 && (steps.every((step) => step === 1) || steps.every((step) => step === -1));
}
