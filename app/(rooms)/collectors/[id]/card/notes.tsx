import { SubmitButton } from '@/app/ui/button/submit-button';
import { InstantText } from '@/app/ui/figures/day-text';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import type { NoteOnCard } from '@/lib/collectors/reads/card';
import css from '../../collectors.module.css';
import { keepTheirNote } from './actions';
import { TakeOff } from './take-off';

type NotesProps = Readonly<{
  notes: readonly NoteOnCard[];
  collectorId: string;
  zone: string;
  mayWrite: boolean;
}>;

/** What is to be remembered of somebody, with who wrote it and when. */
export function Notes({ notes, collectorId, zone, mayWrite }: NotesProps) {
  return (
    <>
      {notes.length === 0 ? <p className={css['quiet']}>Nothing is written down yet.</p> : null}
      <ul className={css['card']}>
        {notes.map((note) => (
          <li key={note.id}>
            <p className={css['note']}>{note.words}</p>
            <p className={css['quiet']}>
              {note.writtenBy}, <InstantText at={note.at} zone={zone} />
            </p>
            {mayWrite ? (
              <details>
                <summary>
                  Change it<span className="heard-only">: {short(note.words)}</span>
                </summary>
                <NoteForm note={note} collectorId={collectorId} />
                <TakeOff
                  {...{ collectorId }}
                  part="note"
                  partId={note.id}
                  what={short(note.words)}
                />
              </details>
            ) : null}
          </li>
        ))}
      </ul>
      {mayWrite ? (
        <details>
          <summary>Write a note</summary>
          <NoteForm note={null} collectorId={collectorId} />
        </details>
      ) : null}
    </>
  );
}

function short(words: string): string {
  return words.length > 40 ? `${words.slice(0, 40)}…` : words;
}

function NoteForm({
  note,
  collectorId,
}: Readonly<{ note: NoteOnCard | null; collectorId: string }>) {
  return (
    <FormFrame action={keepTheirNote} label={note ? 'Change a note' : 'Write a note'}>
      <RequestKey />
      <input type="hidden" name="collectorId" value={collectorId} />
      <input type="hidden" name="noteId" value={note?.id ?? ''} />
      <Field
        name="words"
        label="What is to be remembered"
        kind="textarea"
        hint="Written so that they could read it one day."
        defaultValue={note?.words ?? ''}
        required
      />
      <SubmitButton variant="quiet">{note ? 'Keep the changes' : 'Keep the note'}</SubmitButton>
    </FormFrame>
  );
}
