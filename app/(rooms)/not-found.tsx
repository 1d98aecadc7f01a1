import { ButtonLink } from '@/app/ui/button/button';
import { PageHead } from '@/app/ui/page/page-head';

/** A thing that was asked for by its number or name and is not kept here. */
export default function NothingHere() {
  return (
    <>
      <PageHead
        title="Nothing hangs here"
        lead="What you were looking for may have been given another number or name."
      />
      <ButtonLink href="/">Back to today</ButtonLink>
    </>
  );
}
