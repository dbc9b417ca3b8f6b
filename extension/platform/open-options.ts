import { browser } from 'wxt/browser';

export function openOptions(): void {
  void browser.runtime.openOptionsPage();
}

const BEGUN = '#pair=';

/** Opens the options in a tab, with what was typed to pair already in its field. */
export function openOptionsToPair(typed: string): void {
  const url = browser.runtime.getURL('/options.html');
  void browser.tabs.create({ url: `${url}${BEGUN}${encodeURIComponent(typed)}` });
}

/** What was typed to pair before this page was opened; empty when nothing was. */
export function begunPairing(): string {
  const { hash } = location;
  return hash.startsWith(BEGUN) ? decodeURIComponent(hash.slice(BEGUN.length)) : '';
}
