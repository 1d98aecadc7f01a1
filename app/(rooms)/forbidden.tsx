import { ButtonLink } from '@/app/ui/button/button';
import { PageHead } from '@/app/ui/page/page-head';

/** A room that this person's part does not open. */
export default function NotYourRoom() {
  return (
    <>
      <PageHead
        title="This is not your room"
        lead="Your part here does not open it. If it should, ask the owner: they keep the list of who does what."
      />
      <ButtonLink href="/">Back to today</ButtonLink>
    </>
  );
}
