import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Field } from '@/app/ui/form/field';
import { FormFrame } from '@/app/ui/form/form-frame';
import { Notice } from '@/app/ui/page/notice';
import { Outside } from '@/app/ui/page/outside';
import { findActor, hasStaff } from '@/lib/access/reads';
import { listDemoPeople } from '@/lib/access/reads/demo';
import { insideHref } from '@/lib/access/rules/inside-href';
import { findGallery } from '@/lib/platform/settings';
import { comeIn } from './actions';
import { DemoPeople } from './demo-people';
import css from './door.module.css';

export const metadata: Metadata = { title: 'Sign in' };
// Asked of the database each time, and drawn with the nonce of its request.
export const dynamic = 'force-dynamic';

type DoorProps = Readonly<{
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}>;

/** The door: a name, a password, and in the demo gallery who may be tried. */
export default async function Door({ searchParams }: DoorProps) {
  if (!(await hasStaff())) redirect('/first-run');
  const asked = await searchParams;
  const to = typeof asked['to'] === 'string' ? insideHref(asked['to']) : '/';
  if (await findActor()) redirect(to);
  const [gallery, demoPeople] = await Promise.all([findGallery(), listDemoPeople()]);
  return (
    <Outside title={gallery?.name ?? 'Kiln & Counter'}>
      {gallery?.tagline ? <p className={css['tagline']}>{gallery.tagline}</p> : null}
      {asked['error'] === undefined ? null : (
        <Notice kind="refused">{errorWords(asked['error'])}</Notice>
      )}
      <FormFrame action={comeIn} label="Sign in">
        <input type="hidden" name="to" value={to} />
        <Field name="name" label="Name" required autoComplete="username" autoFocus width="half" />
        <Field
          name="password"
          label="Password"
          kind="password"
          required
          autoComplete="current-password"
          width="half"
        />
        <SubmitButton pendingText="Opening the door…">Sign in</SubmitButton>
      </FormFrame>
      {demoPeople.length > 0 ? <DemoPeople people={demoPeople} /> : null}
    </Outside>
  );
}

/** What next-auth's own route says when it sends somebody back to the door. */
function errorWords(code: string | string[]): string {
  return code === 'WaitALittle'
    ? 'There were several wrong tries. Wait a few minutes, then try once more.'
    : 'This name and this password do not belong together. Look at both once more.';
}
