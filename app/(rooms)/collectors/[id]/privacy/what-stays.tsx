import css from '../../collectors.module.css';

/** What is struck out of somebody, what stays, and why. */
export function WhatStays() {
  return (
    <div className={css['stays']}>
      <p>
        Names, mail, telephones, addresses, people, notes, where pieces hang, trade terms, letters,
        wishes and the pages of their own are struck out. In the books they are called “Erased
        collector” and a number from then on, and nobody is to write to them.
      </p>
      <p>
        What the books must keep stays as it was written: sales, returns and payments with what was
        paid where, entries of the journal, invoices, resale certificates and other tax papers,
        where a sale was sent because its tax hangs on that, and what was signed, under its hash,
        with the name that signed it and the pictures that it speaks of. The history of who did what
        is never changed either; it is no longer shown with their name. Files that were brought in,
        and back-ups, are not searched: throw away those that you need no more. How long the books
        must be kept is a matter of local law: ask your accountant.
      </p>
    </div>
  );
}
