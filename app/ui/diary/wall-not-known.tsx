import { ButtonLink } from '@/app/ui/button/button';
import { Notice } from '@/app/ui/page/notice';

/** No hanging on a wall that nobody knows, and the way to looking at it. */
export function WallNotKnown({ number }: Readonly<{ number: number }>) {
  return (
    <Notice kind="caution" title="The wall is not known">
      A hanging is booked only once somebody knows what the wall is made of.{' '}
      <ButtonLink href={`/commissions/${number}/wall`} variant="quiet">
        Look at the wall
      </ButtonLink>
    </Notice>
  );
}
