import { ProblemError } from '../../api/request.ts';

/** Enough to compare two pictures side by side on a wide screen (common practice, no source). */
const LONGEST_PX = 1600;
const QUALITY = 0.85;

/**
 * A picture drawn anew as a JPEG, upright and at most 1600 pixels long. What a camera wrote beside the picture, such as
 * place, time and owner, is not drawn and so stays out of it. Throws ProblemError for a file that is no picture.
 */
export async function redraw(file: Blob): Promise<Blob> {
  const drawn = await createImageBitmap(file).catch(() => null);
  if (drawn === null) throw unreadable();
  const scale = Math.min(1, LONGEST_PX / Math.max(drawn.width, drawn.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(drawn.width * scale));
  canvas.height = Math.max(1, Math.round(drawn.height * scale));
  const context = canvas.getContext('2d');
  if (context === null) throw unreadable();
  // A JPEG has no transparency, which would turn black.
  context.fillStyle = 'white';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(drawn, 0, 0, canvas.width, canvas.height);
  drawn.close();
  const picture = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
  if (picture === null) throw unreadable();
  return picture;
}

function unreadable(): ProblemError {
  return new ProblemError({
    type: 'about:blank',
    title: 'This browser can’t read that file as a picture.',
    status: 0,
    detail: 'Choose a JPEG, PNG or WebP.',
  });
}
