import { Arriving } from '@/app/ui/page/outside';

/** While a page is on its way. */
export default function Loading() {
  return <Arriving />;
}
