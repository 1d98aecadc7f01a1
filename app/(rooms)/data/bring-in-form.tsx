import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Columns, Slab } from '@/app/ui/page/section';
import { peopleColumns } from '@/lib/data/rules/people';
import { lookAt } from './actions';
import css from './data.module.css';

const kinds = [
  { value: 'people', label: 'People', hint: 'name, mail, telephone, address' },
  {
    value: 'sales',
    label: 'Sales of earlier books',
    hint: 'day, piece, net, tax, how it was paid',
  },
];

/** Brings in a file of people or of sales; it is looked at first. */
export function BringInForm() {
  return (
    <Columns
      wide={
        <Slab>
          <FormFrame action={lookAt} label="Bring in a file">
            <RequestKey />
            <Choice name="kind" legend="What the file holds" options={kinds} size="counter" />
            <Field
              name="file"
              label="The file"
              kind="file"
              accept=".csv,text/csv"
              hint="A CSV in UTF-8, at most 25 MB. Spreadsheets call it “CSV UTF-8”."
              required
            />
            <SubmitButton size="counter" pendingText="Reading it…">
              Look at it
            </SubmitButton>
          </FormFrame>
        </Slab>
      }
      beside={<HowTheyAreWritten />}
    />
  );
}

function HowTheyAreWritten() {
  const people = peopleColumns.map((each) => each.column).join(', ');
  return (
    <div className={css['how']}>
      <p>
        <b>People:</b> the first line names the columns, in any order: {people}. Only the name must
        be there. What you leave empty stays as it is known.
      </p>
      <p>
        <b>Sales:</b> one line for each thing sold: <i>sold on</i>, <i>code</i> or <i>title</i>,{' '}
        <i>quantity</i>, <i>net</i>, <i>tax</i>, <i>tenders</i>. Lines with the same <i>sale</i> are
        one receipt. They are written down on the day they were made; as many pieces come into stock
        at that moment as left it, so that what is here now stays what it is.
      </p>
    </div>
  );
}
