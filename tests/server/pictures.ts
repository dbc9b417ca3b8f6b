import type { PictureType } from '@platewright/core/records/photo.ts';

const BEGINNINGS: Record<PictureType, string> = {
  'image/jpeg': '\u00ff\u00d8\u00ff\u00e0',
  'image/png': '\u0089PNG\r\n\u001a\n',
  'image/webp': 'RIFF\u0010\u0000\u0000\u0000WEBPVP8 ',
};

/** Content that begins as a picture of a type does; no browser could draw it. */
export function picture(type: PictureType, rest: string): Uint8Array {
  return new Uint8Array(Buffer.from(BEGINNINGS[type] + rest, 'latin1'));
}
