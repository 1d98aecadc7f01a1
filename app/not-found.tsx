import type { Metadata } from 'next';
import { ButtonLink } from '@/app/ui/button/button';
import { Outside } from '@/app/ui/page/outside';

export const metadata: Metadata = { title: 'Nothing hangs here' };

/** A page that does not exist, or is not this person's to see. */
export default function NotFound() {
  return (
    <Outside title="Nothing hangs here">
      <p>
        There is no such page, or it is kept for someone else. What you were looking for may have
        been moved or given another name.
      </p>
      <p>
        <ButtonLink href="/">Back to today</ButtonLink>
      </p>
    </Outside>
  );
}
