import type { Metadata } from 'next';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Empty } from '@/app/ui/page/empty';
import { PageHead } from '@/app/ui/page/page-head';
import { requireActor } from '@/lib/access/reads';
import { listDesigns } from '@/lib/catalogue/reads/piece-facts';
import { listMoulds } from '@/lib/catalogue/reads/moulds';
import { dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { getGallery } from '@/lib/platform/settings';
import { add } from '../actions';
import { KindFields } from '../kind-fields';

export const metadata: Metadata = { title: 'Write a mould down' };

/** A mould, what it was made from, and the life it is trusted for. */
export default async function NewMouldPage() {
  const actor = await requireActor('catalogue.keep');
  const [designs, moulds, { timeZone }] = await Promise.all([
    listDesigns(actor),
    listMoulds(actor),
    getGallery(),
  ]);
  const sources = moulds.filter((mould) => mould.kind !== 'working' && mould.retiredOn === null);
  const options = designs.map(({ id, title }) => ({ value: id, label: title }));
  return (
    <>
      <PageHead title="Write a mould down" back={{ href: '/moulds', name: 'Moulds' }} />
      {designs.length === 0 ? (
        <Empty title="No design yet">
          A mould gives a design. Write its first piece down first.
        </Empty>
      ) : (
        <FormFrame action={add} label="Write a mould down">
          <RequestKey />
          <Field name="designId" label="What it gives" kind="select" options={options} required />
          <Field
            name="code"
            label="The number on the mould"
            hint="Such as HERON-M2."
            width="half"
            maxLength={24}
            required
          />
          <KindFields kind="working" fromId={null} slipMl={null} sources={sources} />
          <Field
            name="lifeCasts"
            label="Casts it is trusted for"
            hint="Sharp relief commonly 50 to 100, hollow forms 100 to 150."
            kind="count"
            width="short"
            defaultValue="100"
            required
          />
          <Field
            name="begunWith"
            label="Casts it has given already"
            kind="count"
            width="short"
            optional
          />
          <Field
            name="madeOn"
            label="Made on"
            kind="day"
            width="short"
            defaultValue={dayOf(now(), timeZone)}
            required
          />
          <Field name="note" label="A note" maxLength={500} optional />
          <SubmitButton size="counter">Write it down</SubmitButton>
        </FormFrame>
      )}
    </>
  );
}
