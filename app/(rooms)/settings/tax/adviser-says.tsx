import { Caution } from '@/app/ui/page/caution';

/** Whose business the rates are. */
export function AdviserSays() {
  return (
    <Caution>
      the tool works the tax out from what is kept here. The rates and rules are the owner’s to
      keep; a tax adviser decides which are yours, and what is taxed.
    </Caution>
  );
}
