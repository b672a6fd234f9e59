import { setTimeout as sleep } from 'node:timers/promises';
import type { Page, Response } from '@playwright/test';
import { againstContract, DOCUMENT } from '../../api/contract';

/** Addresses of the description with places in them, as patterns; a word is stronger than a place. */
const ADDRESSES = Object.keys(DOCUMENT.paths)
  .map((address) => ({
    address,
    pattern: new RegExp(`^${address.replaceAll('.', '\\.').replaceAll(/\{\w+\}/g, '[^/]+')}$`),
    places: address.split('{').length,
  }))
  .sort((a, b) => a.places - b.places);

/** An answer the page no longer waited for may never come to an end: at the end of a test so long is waited for what is open. */
const PATIENCE_MS = 2_000;

/** Holds every answer that a page gets from the API against the description. */
export function watchAnswers(page: Page): { undescribed(): Promise<string[]> } {
  const looked: Promise<string[]>[] = [];
  page.on('response', (response) => {
    const { pathname } = new URL(response.url());
    const found = ADDRESSES.find(({ pattern }) => pattern.test(pathname));
    if (found) looked.push(look(response, found.address));
  });
  return {
    async undescribed() {
      const patience = sleep(PATIENCE_MS, [] as string[]);
      const all = await Promise.all(looked.map((one) => Promise.race([one, patience])));
      return [...new Set(all.flat())];
    },
  };
}

async function look(response: Response, address: string): Promise<string[]> {
  const request = response.request();
  let text: string;
  try {
    text = await response.text();
  } catch {
    // the page went elsewhere before all of it came
    return [];
  }
  const contentType = response.headers()['content-type'] ?? '';
  const sent = request.postData();
  const asked = { method: request.method(), address };
  const isJson = sent !== null && (request.headers()['content-type'] ?? '').startsWith('application/json');
  try {
    return againstContract(
      asked,
      { status: response.status(), contentType, text },
      isJson ? JSON.parse(sent) : undefined,
    );
  } catch (fault) {
    return [`${asked.method} ${address}: ${fault instanceof Error ? fault.message : String(fault)}`];
  }
}
