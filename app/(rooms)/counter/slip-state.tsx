import type { SlipShown } from '@/lib/counter/reads';

/** Which slip a form is about, and the state of it that was shown. */
export function SlipState({ slip }: Readonly<{ slip: Pick<SlipShown['slip'], 'id' | 'version'> }>) {
  return (
    <>
      <input type="hidden" name="slipId" value={slip.id} />
      <input type="hidden" name="version" value={slip.version} />
    </>
  );
}
