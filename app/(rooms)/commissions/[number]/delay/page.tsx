import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import { requireActor } from '@/lib/access/reads';
import { isAllowed } from '@/lib/access/rules';
import { clockWords } from '@/lib/commissions/rules/course/clocks';
import { clocks } from '@/lib/commissions/rules/facts';
import { formatDay } from '@/lib/dates/rules';
import { ActPage, AboutCommission } from '../act-page';
import { readSheetFor, type SheetParams } from '../read-sheet';
import { writeDelay } from './actions';

export const metadata = { title: 'Tell them of another day' };

/** A notice of delay: to which day, why, and how they were told. */
export default async function DelayPage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.write');
  const sheet = await readSheetFor(actor, params, 'delay');
  const promisedOn = sheet.agreement?.promisedOn ?? null;
  return (
    <ActPage
      sheet={sheet}
      title="Tell them of another day"
      lead={
        promisedOn
          ? `Promised is ${formatDay(promisedOn, 'long')}. A notice tells; the promise itself moves with a signed change order.`
          : undefined
      }
    >
      {promisedOn === null ? (
        <Notice kind="caution">No day is promised yet, so none can move.</Notice>
      ) : (
        <FormFrame action={writeDelay} label="Tell them of another day">
          <RequestKey />
          <AboutCommission sheet={sheet} />
          <Field name="toOn" label="To which day" kind="day" width="short" />
          <Field
            name="clock"
            label="On whose clock the days run"
            kind="select"
            options={clocks.map((value) => ({ value, label: clockWords[value] }))}
            defaultValue="kiln"
          />
          <Field
            name="why"
            label="Why, as they are told"
            hint="It stands on their page and in the evidence."
            kind="textarea"
            rows={2}
          />
          <Field
            name="toldHow"
            label="How they were told"
            placeholder="by letter"
            width="half"
            defaultValue="by letter"
          />
          <Field
            name="toldOn"
            label="Told on"
            kind="day"
            width="short"
            defaultValue={sheet.telling.today}
          />
          <SubmitButton>Write the notice down</SubmitButton>
        </FormFrame>
      )}
      {isAllowed(actor.roles, 'commissions.take_money') ? (
        <p>
          <ButtonLink
            href={`/commissions/${sheet.number}/their-page?letter=day_moves`}
            variant="quiet"
          >
            Write them a letter about it
          </ButtonLink>
        </p>
      ) : null}
    </ActPage>
  );
}
