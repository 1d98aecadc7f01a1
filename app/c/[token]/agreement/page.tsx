import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { agreementForCollector } from '@/lib/commissions/reads/agreement/agreements';
import { agreementPaperForCollector } from '@/lib/commissions/reads/agreement/paper-for';
import { dayOf } from '@/lib/dates/rules';
import { openPage, type TokenParams } from '../../open-page';
import { Kept } from '../../parts/kept';
import { SignForm } from '../../parts/sign-form';
import { TheirAct } from '../../parts/their-act';
import { signTheAgreement } from '../actions';
import css from '../../page.module.css';

export const metadata: Metadata = { title: 'The agreement' };

/** The agreement word for word: to be signed, or as it was signed. */
export default async function AgreementPage({ params }: Readonly<{ params: TokenParams }>) {
  const page = await openPage(params);
  const { link, gallery, at, token } = page;
  const signed = await agreementForCollector(link.commissionId);
  const today = dayOf(at, gallery.timeZone);
  const paper = signed ?? (await agreementPaperForCollector(link.commissionId, today));
  if (!paper) notFound();
  return (
    <TheirAct
      page={page}
      title="The agreement"
      lead="There is one agreement. Whatever changes after it is a change order that you sign as well."
    >
      <p className={css['words']}>{paper.body}</p>
      <p className={css['ways']}>
        <a href={`/c/${token}/paper/agreement`}>The same as a paper (PDF)</a>
      </p>
      {signed ? (
        <Kept
          said="It is agreed"
          by={signed.agreedBy}
          on={signed.agreedOn}
          sha256={signed.contentSha256}
          next="What is to be decided or paid next stands on your page."
        />
      ) : (
        <SignForm
          page={page}
          action={signTheAgreement}
          label="Sign it"
          sha256={paper.contentSha256}
          send="Sign the agreement"
        />
      )}
    </TheirAct>
  );
}
