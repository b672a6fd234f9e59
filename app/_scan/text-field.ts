/** Where keys write text. */
export type TextField = HTMLInputElement | HTMLTextAreaElement;

const WRITTEN_IN = new Set(['text', 'search', 'url', 'tel', 'email', 'password', 'number']);

export function isTextField(element: unknown): element is TextField {
  if (element instanceof HTMLTextAreaElement) return true;
  return element instanceof HTMLInputElement && WRITTEN_IN.has(element.type);
}

/** Whether what is typed there is a secret, whether or not it is being shown. */
export function isSecret(element: unknown): boolean {
  return (
    element instanceof HTMLInputElement && (element.type === 'password' || element.dataset.secret === 'true')
  );
}

/** Fields that take keys in their own way (a choice by its first letter, the parts of a date): those can’t be held up. */
export function takesKeysItself(element: unknown): element is HTMLSelectElement | HTMLInputElement {
  if (element instanceof HTMLSelectElement) return true;
  if (element instanceof HTMLElement && element.isContentEditable) return true;
  return (
    element instanceof HTMLInputElement &&
    ['date', 'time', 'datetime-local', 'month', 'week', 'color', 'range'].includes(element.type)
  );
}

/** Sets a field back to what stood in it, so that whatever listens to it (React) sees the change. */
export function setValue(element: TextField | HTMLSelectElement, value: string): void {
  if (element.value === value) return;
  const prototype =
    element instanceof HTMLTextAreaElement
      ? HTMLTextAreaElement.prototype
      : element instanceof HTMLSelectElement
        ? HTMLSelectElement.prototype
        : HTMLInputElement.prototype;
  Object.getOwnPropertyDescriptor(prototype, 'value')?.set?.call(element, value);
  element.dispatchEvent(new Event('input', { bubbles: true }));
  if (element instanceof HTMLSelectElement) element.dispatchEvent(new Event('change', { bubbles: true }));
}

/** Writes a character where the cursor is, as typing does: undo, length limits and listeners all work. */
export function typeInto(field: TextField, character: string): void {
  if (field.readOnly || field.disabled) return;
  if (document.activeElement === field) {
    // the only way to write as a person does; every browser keeps it for this
    if (document.execCommand('insertText', false, character)) return;
  }
  if (field instanceof HTMLInputElement && (field.type === 'number' || field.type === 'email')) {
    setValue(field, field.value + character);
    return;
  }
  const [from, to] = [field.selectionStart ?? field.value.length, field.selectionEnd ?? field.value.length];
  setValue(field, field.value.slice(0, from) + character + field.value.slice(to));
}
