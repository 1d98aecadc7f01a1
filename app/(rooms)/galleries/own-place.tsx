import { Button } from '@/app/ui/button/button';
import { Field } from '@/app/ui/form/field';
import css from '@/app/(rooms)/stock/places/ready/ready.module.css';
import type { ReadyAddress } from '@/app/(rooms)/stock/places/ready/address';
import type { PlaceListed } from '@/lib/stock/reads/moves/places';
import { writeReady } from '@/lib/stock/rules/moves/move';

type OwnPlaceProps = Readonly<{
  address: ReadyAddress;
  places: readonly PlaceListed[];
  label: string;
  placeId: string;
}>;

/** Chooses which of our own places pieces come from, or go back to. */
export function OwnPlace({ address, places, label, placeId }: OwnPlaceProps) {
  const options = places.map((place) => ({
    value: place.id,
    label: `${place.name} (${place.pieces.toLocaleString('en-US')})`,
  }));
  return (
    <form action={address.path} className={css['scan']} key={placeId}>
      <input type="hidden" name="ready" value={writeReady(address.ready)} />
      <Field
        name="place"
        label={label}
        kind="select"
        size="counter"
        options={options}
        defaultValue={placeId}
      />
      <Button type="submit" variant="quiet" size="counter">
        Choose
      </Button>
    </form>
  );
}

/** Our own open places, the counter's first. */
export function ownPlaces(places: readonly PlaceListed[]): PlaceListed[] {
  const ours = ['gallery', 'storeroom', 'studio'];
  return places.filter((place) => !place.isClosed && ours.includes(place.kind));
}
