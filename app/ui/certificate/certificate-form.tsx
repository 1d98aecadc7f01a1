import { Button, ButtonLink } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import type { FieldOption } from '@/app/ui/form/field-props';
import { Notice } from '@/app/ui/page/notice';
import type { CertificateField } from '@/lib/documents/input/certificate';
import type { CertificateAddress } from './certificate-address';
import css from './certificate.module.css';

type CertificateFormProps = Readonly<{
  /** The page it stands on; its PDF lies under it. */
  path: string;
  address: CertificateAddress;
  /** The numbers of an edition that can be certified; none for what is no edition. */
  numbers?: readonly FieldOption[] | undefined;
}>;

/** What stands on a certificate, to be looked over before it is made; then the way to its PDF. */
export function CertificateForm({ path, address, numbers }: CertificateFormProps) {
  const { values, faults, asked, query } = address;
  const of = (name: CertificateField) => ({
    name,
    defaultValue: values[name],
    fault: faults[name],
  });
  return (
    <form action={path} className={css['form']} aria-label="Certificate of authenticity">
      {asked ? (
        <Notice kind="done" title="It is made">
          <p>Print it, and sign it by hand.</p>
          <ButtonLink href={`${path}/pdf?${query}`}>Open it as a PDF</ButtonLink>
        </Notice>
      ) : null}
      {Object.keys(faults).length > 0 ? (
        <Notice kind="refused">Not yet: please look again at what is marked below.</Notice>
      ) : null}
      <Field label="Title" {...of('title')} />
      {numbers ? <Field name="number" label="Number" kind="select" options={numbers} /> : null}
      <Field label="Made by" {...of('artist')} />
      <Field label="Year it was finished" width="short" optional {...of('year')} />
      <Field label="Clay, glazes, how it was fired" optional {...of('medium')} />
      <Field label="Size" optional {...of('size')} />
      <Field label="Weight" width="short" optional {...of('weight')} />
      <Field
        label="First owner"
        hint="Whoever it is for; not always who paid. Left empty, the line is left off."
        optional
        {...of('owner')}
      />
      <p>
        <Button type="submit">Make the certificate</Button>
      </p>
    </form>
  );
}
