'use client';

import { Button } from '@/app/ui/button/button';
import { Outside } from '@/app/ui/page/outside';

type FaultProps = Readonly<{ error: Error & { digest?: string }; reset: () => void }>;

/** What a person sees when the program broke: nothing was half done, and what to try. */
export default function Fault({ error, reset }: FaultProps) {
  return (
    <Outside title="That did not work, and it is our fault">
      <p>
        Nothing was half done: whatever you had begun is as it was before. Try it once more; if it
        happens again, tell whoever looks after the program
        {error.digest ? (
          <>
            {' '}
            and give them this number: <strong>{error.digest}</strong>
          </>
        ) : null}
        .
      </p>
      <p>
        <Button onClick={reset}>Try once more</Button>
      </p>
    </Outside>
  );
}
