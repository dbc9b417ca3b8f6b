import { browser } from 'wxt/browser';

/** Asks the person for a host permission; only in answer to a press. */
export function askHostPermission(pattern: string): Promise<boolean> {
  return browser.permissions.request({ origins: [pattern] });
}
