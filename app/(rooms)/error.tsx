'use client';

import { Button } from '@/app/ui/button/button';
import { PageHead } from '@/app/ui/page/page-head';

type FaultProps = Readonly<{ error: Error & { digest?: string }; reset: () => void }>;

/** The program broke inside a room; the rail stays, so that one can go on elsewhere. */
export default function RoomFault({ error, reset }: FaultProps) {
  return (
    <>
      <PageHead
        title="That did not work, and it is our fault"
        lead="Nothing was half done: whatever you had begun is as it was before. Try it once more."
      />
      {error.digest ? (
        <p>
          If it happens again, give this number to whoever looks after the program:{' '}
          <strong>{error.digest}</strong>
        </p>
      ) : null}
      <p>
        <Button onClick={reset}>Try once more</Button>
      </p>
    </>
  );
}
