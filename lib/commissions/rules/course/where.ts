import type { Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';

/** No facts besides its name. */
type Nothing = unknown;
type Visit = { readonly kind: 'hanging' | 'delivery' | 'fetching'; readonly on: Day };

/** Every place where a commission can stand, with the facts that its sentence needs. */
export type WhereFacts = {
  to_propose: Nothing;
  proposal_to_send: { readonly version: number };
  proposal_out: { readonly version: number; readonly validUntilOn: Day };
  proposal_ran_out: { readonly version: number; readonly validUntilOn: Day };
  to_sign: Nothing;
  /** Made before anything was agreed, by the owner's word. */
  to_agree: Nothing;
  sketch_to_show: { readonly letter: string };
  sketch_shown: { readonly letter: string };
  /** Which areas of the sketch have no approved tile; empty where the sketch names none. */
  colours_to_show: { readonly number: number; readonly areas: readonly string[] };
  twin_to_give: { readonly number: string };
  colours_shown: { readonly number: string };
  deposit_to_ask: { readonly leftCents: Cents };
  deposit_asked: { readonly leftCents: Cents };
  days_to_cancel: { readonly clayFromOn: Day };
  job_to_open: Nothing;
  clay_to_begin: { readonly jobNumber: number };
  in_the_studio: {
    readonly jobNumber: number;
    readonly pieces: number;
    readonly ofPieces: number;
    /** The name of the step, as it reads after "at". */
    readonly at: string;
  };
  /** Nobody knows what the wall is made of, so no day can be booked. */
  wall_to_look_at: Nothing;
  hanging_to_book: Nothing;
  hanging_booked: Visit;
  to_hand_over: Visit;
  rest_owed: { readonly handedOn: Day; readonly leftCents: Cents };
  handed_over: { readonly handedOn: Day };
  ended: { readonly endedOn: Day; readonly why: string };
};

/** The name of a place where a commission can stand. */
export type WhereKey = keyof WhereFacts;

/** Where a commission stands, with its facts. */
export type Where<Key extends WhereKey = WhereKey> = {
  [One in Key]: { readonly key: One } & WhereFacts[One];
}[Key];
