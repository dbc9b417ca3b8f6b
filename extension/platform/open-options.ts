import { browser } from 'wxt/browser';

export function openOptions(): void {
  void browser.runtime.openOptionsPage();
}
