import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { Section } from '@/app/ui/page/section';
import { Views } from '@/app/ui/page/views';
import type { MailTo } from '@/lib/commissions/reads/page/mail-to';
import type { Sheet } from '@/lib/commissions/reads/sheet';
import {
  letterKinds,
  letterNames,
  mailtoOf,
  type LetterDraft,
  type LetterKind,
} from '@/lib/commissions/rules/page/letters';
import { linkDaysUsual } from '@/lib/commissions/rules/page/link';
import { AboutCommission } from '../act-page';
import { sendTheirLetter } from './actions';
import css from './their-page.module.css';

type LetterFormProps = Readonly<{
  sheet: Sheet;
  kind: LetterKind;
  draft: LetterDraft;
  to: MailTo;
  isSetUp: boolean;
}>;

/** A letter with words to begin with, sent from here or copied into one's own mail. */
export function LetterForm({ sheet, kind, draft, to, isSetUp }: LetterFormProps) {
  const here = `/commissions/${sheet.number}/their-page`;
  return (
    <Section title="Write to them" id="letter">
      <Views
        label="What the letter is about"
        views={letterKinds.map((each) => ({
          href: `${here}?letter=${each}#letter`,
          name: letterNames[each],
          current: each === kind,
        }))}
      />
      {to.wantsLetters ? null : (
        <Notice kind="caution" title="No letters by mail">
          {sheet.collector.name} said no to letters by mail. Tell them another way, unless they
          asked for this one.
        </Notice>
      )}
      {isSetUp ? (
        <Sending {...{ sheet, draft, to, kind }} />
      ) : (
        <>
          <Notice kind="caution" title="No mail server is set up here">
            Letters do not go out from here. Copy the words, or open them in your own mail; the
            README says how a mail server is set up.
          </Notice>
          <div className={css['once']}>
            <label htmlFor="letter-words">{draft.subject}</label>
            <textarea id="letter-words" readOnly rows={9} value={draft.words} />
            <p className={css['acts']}>
              <a href={mailtoOf(to.address, draft)}>Open it in your own mail</a>
            </p>
          </div>
        </>
      )}
    </Section>
  );
}

function Sending({ sheet, draft, to, kind }: Omit<LetterFormProps, 'isSetUp'>) {
  return (
    <FormFrame action={sendTheirLetter} label="Send a letter" key={kind}>
      <RequestKey />
      <AboutCommission sheet={sheet} />
      <Field
        name="toName"
        label="To"
        defaultValue={sheet.collector.name}
        width="half"
        maxLength={120}
      />
      <Field
        name="toAddress"
        label="Mail address"
        kind="email"
        defaultValue={to.address}
        width="half"
        maxLength={254}
      />
      <Field name="subject" label="About" defaultValue={draft.subject} maxLength={160} />
      <Field
        name="words"
        label="Letter"
        kind="textarea"
        rows={9}
        maxLength={8000}
        defaultValue={draft.words}
      />
      <Choice
        name="withAddress"
        legend="The address of their page"
        hint="Earlier addresses stay open until they run out or are withdrawn."
        options={[
          { value: 'yes', label: 'Make a new one, and put it under the letter' },
          { value: 'no', label: 'They have it' },
        ]}
        defaultValue={kind === 'page' ? 'yes' : 'no'}
      />
      <Field
        name="days"
        label="Days for which a new one opens"
        kind="count"
        defaultValue={String(linkDaysUsual)}
        width="short"
      />
      {to.wantsLetters ? null : (
        <Choice
          name="allTheSame"
          kind="tick"
          legend="All the same"
          options={[{ value: 'yes', label: 'They asked for this one' }]}
        />
      )}
      <SubmitButton pendingText="Handing it to the mail server…">Send the letter</SubmitButton>
    </FormFrame>
  );
}
