import type { TenderKind } from '@/lib/ledger/rules';

/** How a tender is called on paper. */
export const tenderWords: Readonly<Record<TenderKind, string>> = {
  cash: 'Cash',
  card: 'Card',
  cheque: 'Cheque',
  bank_transfer: 'Bank transfer',
  voucher: 'Gift voucher',
  store_credit: 'Store credit',
  deposit: 'Deposit paid before',
  layaway: 'Layaway money paid before',
  on_account: 'Still to be paid',
};

/** The gallery's address in lines, as it stands at the head of a paper; empty parts are left out. */
export function addressLines(gallery: {
  street: string;
  city: string;
  state: string;
  postcode: string;
  phone: string;
  email: string;
}): string[] {
  const place = [gallery.city, [gallery.state, gallery.postcode].filter(Boolean).join(' ')];
  const reach = [gallery.phone, gallery.email].filter(Boolean).join(' · ');
  return [gallery.street, place.filter(Boolean).join(', '), reach].filter(Boolean);
}
