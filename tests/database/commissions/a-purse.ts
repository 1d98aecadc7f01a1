import { randomUUID } from 'node:crypto';
import { giveBackInput } from '@/lib/commissions/input/money';
import type { PaymentKind } from '@/lib/commissions/rules/words';
import { endCommission } from '@/lib/commissions/writes/end';
import { handOver } from '@/lib/commissions/writes/hand-over';
import { askForMoney } from '@/lib/commissions/writes/money/ask';
import { giveBack } from '@/lib/commissions/writes/money/refund';
import { takePayment } from '@/lib/commissions/writes/money';
import type { Day } from '@/lib/dates/rules';
import type { OpenGallery } from '@/tests/database/sales/open-gallery';
import { aPayment, on } from './a-commission';
import { agreeWithBooks } from './the-books';

/** The day of these stories, and one two weeks after it. */
export const today: Day = '2026-05-06';
/** See {@link today}. */
export const later: Day = '2026-05-20';

/** A commission, as its tests name it. */
export type Agreed = { commissionId: string; number: number };

/** How a payment comes in, where it is not a card's of today. */
export type HowPaid = {
  kind?: PaymentKind;
  day?: Day;
  reference?: string;
  keepsRest?: boolean;
  isAnother?: boolean;
};

/** Everything that moves the money of a commission, each by whoever may, with a key of its own. */
export type MoneyActs = ReturnType<typeof moneyActs>;

/** See {@link MoneyActs}. */
export function moneyActs(gallery: OpenGallery) {
  return {
    sums: (agreed: Agreed) => agreeWithBooks(gallery, agreed),
    pay({ commissionId }: Agreed, amountCents: bigint, how: HowPaid = {}) {
      const { kind = 'card', day = today, ...said } = how;
      const payment = { ...aPayment(commissionId, amountCents, kind), ...said };
      return takePayment(on(gallery.clerk, day), payment);
    },
    back({ commissionId }: Agreed, paymentId: string, amount: string, day: Day = today) {
      const form = { requestKey: randomUUID(), commissionId, paymentId, amountCents: amount };
      const said = { kind: 'card', reference: '', why: 'Too much came in.' };
      return giveBack(on(gallery.owner, day), giveBackInput.parse({ ...form, ...said }));
    },
    ask({ commissionId }: Agreed, amountCents: bigint, stepPosition: number | null, day = today) {
      const form = { requestKey: randomUUID(), commissionId, name: 'A part', amountCents };
      return askForMoney(on(gallery.clerk, day), { ...form, stepPosition, dueOn: later });
    },
    handIt({ commissionId }: Agreed, evenIfOwed: string | null, handedOn: Day = today) {
      const form = { requestKey: randomUUID(), commissionId, signedBy: 'Marit Oland', handedOn };
      return handOver(on(gallery.owner, handedOn), { ...form, evenIfOwed });
    },
    endIt({ commissionId }: Agreed, over: { fate?: string; own?: bigint; endedOn?: Day } = {}) {
      const { fate = '', own: ownFeeCents = null, endedOn = today } = over;
      const end = { requestKey: randomUUID(), commissionId, why: 'The house was sold.' };
      return endCommission(on(gallery.owner, endedOn), { ...end, endedOn, fate, ownFeeCents });
    },
  };
}
