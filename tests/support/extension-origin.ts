/** The origin of an extension, as Chromium writes it. */
export const EXTENSION = 'chrome-extension://abcdefghijklmnopabcdefghijklmnop';
