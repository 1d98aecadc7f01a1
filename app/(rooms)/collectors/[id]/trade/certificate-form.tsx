import { PictureField } from '@/app/(rooms)/commissions/picture-field';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Caution } from '@/app/ui/page/caution';
import type { TradePage } from '@/lib/collectors/reads/trade-page';
import type { Day } from '@/lib/dates/rules';
import { fileCertificate } from './actions';

type CertificateFormProps = Readonly<{ trade: TradePage; today: Day; collectorId: string }>;

/** A resale certificate as it is handed over, with a picture of it when there is one. */
export function CertificateForm({ trade, today, collectorId }: CertificateFormProps) {
  return (
    <FormFrame action={fileCertificate} label="Put a certificate on file">
      <RequestKey />
      <input type="hidden" name="collectorId" value={collectorId} />
      <Field
        name="state"
        label="State"
        defaultValue={trade.homeState}
        hint="As it stands among the tax places."
        maxLength={60}
        width="half"
        required
      />
      <Field
        name="permitNumber"
        label="Number of the permit"
        maxLength={40}
        width="half"
        required
      />
      <Field
        name="legalName"
        label="Name on the certificate"
        defaultValue={trade.name}
        maxLength={120}
        required
      />
      <Field
        name="buys"
        label="What they buy to sell again"
        hint="Such as wall reliefs and tile for clients."
        maxLength={200}
        optional
      />
      <Field
        name="fromOn"
        label="Holds from"
        kind="day"
        defaultValue={today}
        width="half"
        required
      />
      <Field
        name="untilOn"
        label="Last day"
        kind="day"
        hint="Left empty when it does not run out."
        width="half"
        optional
      />
      <PictureField
        name="picture"
        label="A picture of it"
        hint="If you like. JPEG, PNG or WebP; a telephone can take it now."
      />
      <Caution>
        would this buyer sell these pieces again? If that is hard to believe, charge the tax. Keep
        the certificate for four years after the last sale under it, or longer where the state asks.
      </Caution>
      <SubmitButton>Put it on file</SubmitButton>
    </FormFrame>
  );
}
