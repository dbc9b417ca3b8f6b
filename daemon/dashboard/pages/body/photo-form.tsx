import { formatDay } from '@platewright/core/ui/format-date.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useId, useRef, useState } from 'preact/hooks';
import { edit, removal, sendEdits } from '../../api/edits.ts';
import { sendPicture } from '../../api/photos.ts';
import { Field } from '../../forms/field.tsx';
import { ProblemNote } from '../../shell/problem-note.tsx';
import { useNotice } from '../../state/notice.tsx';
import { useSubmit } from '../../state/use-submit.ts';
import { redraw } from './redraw.ts';

/** One photo of a date. */
export function PhotoForm({ body }: { body: BodyView }) {
  const { athlete } = body;
  const { tell } = useNotice();
  const { busy, problem, run, idOf } = useSubmit();
  const [file, setFile] = useState<File | null>(null);
  const [date, setDate] = useState(body.date);
  const [note, setNote] = useState('');
  const input = useRef<HTMLInputElement>(null);
  const id = useId();

  const save = async () => {
    if (file === null || !date) return;
    const photo = idOf();
    const stored = await run(async () => {
      const sha256 = await sendPicture(athlete, await redraw(file));
      const fields = {
        date,
        sha256,
        mediaType: 'image/jpeg',
        ...(note.trim() && { note: note.trim() }),
      } as const;
      await sendEdits([edit('photo', athlete, photo, fields)]);
    });
    if (!stored) return;
    tell(`Added the photo of ${formatDay(date)}.`, [removal('photo', athlete, photo, true)]);
    setFile(null);
    setNote('');
    if (input.current) input.current.value = '';
  };

  return (
    <form
      class="fields"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <div class="field photo-file">
        <label for={id}>Photo</label>
        <input
          ref={input}
          id={id}
          class="input"
          type="file"
          accept="image/jpeg,image/png,image/webp"
          aria-describedby={`${id}-hint`}
          onChange={(event) => setFile(event.currentTarget.files?.[0] ?? null)}
        />
      </div>
      <Field label="Date" type="date" value={date} max={body.date} onText={setDate} />
      <Field label="Note" value={note} onText={setNote} maxLength={2000} placeholder="front, relaxed" />
      <div class="field-button">
        <button type="submit" class="button" disabled={busy || file === null || !date}>
          {busy ? 'Adding…' : 'Add the photo'}
        </button>
      </div>
      <p class="hint wide" id={`${id}-hint`}>
        It is drawn anew in this browser before it is sent, so that place, time and camera stay out of it.
      </p>
      {problem && <ProblemNote problem={problem} />}
    </form>
  );
}
