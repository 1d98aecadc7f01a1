import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Notice } from '@/app/ui/page/notice';
import { changeOrdersForCollector } from '@/lib/commissions/reads/agreement/agreements';
import { openPage, type TokenParams } from '../../../open-page';
import { Kept } from '../../../parts/kept';
import { SignForm } from '../../../parts/sign-form';
import { TheirAct } from '../../../parts/their-act';
import { signTheChange } from '../../actions';
import css from '../../../page.module.css';

export const metadata: Metadata = { title: 'A change order' };

type ChangeProps = Readonly<{ params: TokenParams & Promise<{ order: string }> }>;

/** A change order word for word: it counts once it is signed. */
export default async function ChangePage({ params }: ChangeProps) {
  const page = await openPage(params);
  const { order } = await params;
  const { link, token } = page;
  const orders = await changeOrdersForCollector(link.commissionId);
  const change = orders.find(({ number }) => String(number) === order);
  if (!change) notFound();
  return (
    <TheirAct page={page} title={`Change order ${change.number}`} lead={change.words}>
      <p className={css['words']}>{change.body}</p>
      <p className={css['ways']}>
        <a href={`/c/${token}/paper/change-${change.number}`}>The same as a paper (PDF)</a>
      </p>
      {change.signed ? (
        <Kept
          said={`Change order ${change.number} is signed`}
          by={change.signed.name}
          on={change.signed.on}
          sha256={change.contentSha256}
          next="From now on it counts; the price and the day follow it."
        />
      ) : change.withdrawnWhy !== null ? (
        <Notice kind="caution">The gallery took it back: nothing changes.</Notice>
      ) : (
        <SignForm
          page={page}
          action={signTheChange}
          label="Sign it"
          sha256={change.contentSha256}
          send="Sign the change order"
        >
          <input type="hidden" name="changeOrderId" value={change.id} />
        </SignForm>
      )}
    </TheirAct>
  );
}
