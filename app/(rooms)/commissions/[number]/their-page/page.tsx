import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import { Section } from '@/app/ui/page/section';
import { requireActor } from '@/lib/access/reads';
import { readMailTo } from '@/lib/commissions/reads/page/mail-to';
import { listLinks, listMails } from '@/lib/commissions/reads/page/links';
import { draftOf, letterKinds } from '@/lib/commissions/rules/page/letters';
import { linkDaysBetween, linkDaysUsual } from '@/lib/commissions/rules/page/link';
import { now } from '@/lib/platform/clock';
import { mailIsSetUp } from '@/lib/platform/mail';
import { ActPage, AboutCommission } from '../act-page';
import { readSheet, type SheetParams } from '../read-sheet';
import { openTheirPage } from './actions';
import { AddressOnce } from './address-once';
import { LetterForm } from './letter-form';
import { LinksMade } from './links-made';

export const metadata = { title: 'Their own page' };

type TheirPageProps = Readonly<{
  params: SheetParams;
  searchParams: Promise<{ letter?: string | string[] }>;
}>;

/** Opening the collector's own page to them, and writing to them about it. */
export default async function TheirPage({ params, searchParams }: TheirPageProps) {
  const actor = await requireActor('commissions.take_money');
  const sheet = await readSheet(actor, params);
  const asked = (await searchParams).letter;
  const kind = letterKinds.find((each) => each === asked) ?? 'page';
  const [links, mails, to] = await Promise.all([
    listLinks(actor, sheet.id, now()),
    listMails(actor, sheet.id),
    readMailTo(actor, sheet.id),
  ]);
  const about = { toName: sheet.collector.name, title: sheet.title, gallery: sheet.gallery.name };
  const [greeting, ...rest] = draftOf('page', about).words.split('\n\n');
  return (
    <ActPage
      sheet={sheet}
      title="Their own page"
      lead="Whoever holds an address of it sees this commission with its prices, and answers in its name."
    >
      <Section title="Make an address">
        <Caution>
          The address is shown once and kept nowhere. Give it to the one who decides, not to a list.
        </Caution>
        <FormFrame action={openTheirPage} label="Make an address">
          <RequestKey />
          <AboutCommission sheet={sheet} />
          <Field
            name="forName"
            label="Who it is for"
            defaultValue={sheet.collector.name}
            width="half"
            maxLength={120}
          />
          <Field
            name="days"
            label="Days for which it opens"
            kind="count"
            hint={`${linkDaysBetween.least} to ${linkDaysBetween.most}.`}
            defaultValue={String(linkDaysUsual)}
            width="short"
          />
          <SubmitButton>Make the address</SubmitButton>
          <AddressOnce
            before={[greeting, rest[0]].join('\n\n')}
            after={rest.slice(1).join('\n\n')}
            subject={draftOf('page', about).subject}
            to={to.address}
          />
        </FormFrame>
      </Section>
      <LetterForm {...{ sheet, kind, to }} isSetUp={mailIsSetUp()} draft={draftOf(kind, about)} />
      <LinksMade {...{ sheet, links, mails }} />
    </ActPage>
  );
}
