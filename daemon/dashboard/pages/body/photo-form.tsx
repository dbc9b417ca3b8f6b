import { formatDay } from '@platewright/core/ui/format-date.ts';
import type { BodyView } from '@platewright/core/views/body-types.ts';
import { useId, useRef, useState } from 'preact/hooks';
import { sendPicture } from '../../api/photos.ts';
import { Field } from '../../forms/field.tsx';
import { RecordForm } from '../../forms/record-form.tsx';
import { useAdd } from '../../state/use-add.ts';
import { redraw } from './redraw.ts';

/** One photo of a date. */
export function PhotoForm({ body }: { body: BodyView }) {
  const { submit, add } = useAdd();
  const [file, setFile] = useState<File | null>(null);
  const [date, setDate] = useState(body.date);
  const [note, setNote] = useState('');
  const input = useRef<HTMLInputElement>(null);
  const id = useId();

  const save = async () => {
    if (file === null || !date) return;
    const fields = async () => {
      const sha256 = await sendPicture(body.athlete, await redraw(file));
      return { date, sha256, mediaType: 'image/jpeg', ...(note.trim() && { note: note.trim() }) } as const;
    };
    if (!(await add('photo', fields, `Added the photo of ${formatDay(date)}.`))) return;
    setFile(null);
    setNote('');
    if (input.current) input.current.value = '';
  };

  return (
    <RecordForm
      submit={submit}
      save={save}
      ready={file !== null && date !== ''}
      button={submit.busy ? 'Adding…' : 'Add the photo'}
      below={
        <p class="hint wide" id={`${id}-hint`}>
          It is drawn anew in this browser before it is sent, so that place, time and camera stay out of it.
        </p>
      }
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
    </RecordForm>
  );
}
