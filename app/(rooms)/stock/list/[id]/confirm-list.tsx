import { SubmitButton } from '@/app/ui/button/submit-button';
import { Choice } from '@/app/ui/form/choice';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Notice } from '@/app/ui/page/notice';
import type { ListShown } from '@/lib/stock/reads/stock-lists';
import { confirmList, lookOnceMore } from '../../actions';

/** The yes to exactly the list that is shown. */
export function ConfirmList({ list }: Readonly<{ list: ListShown }>) {
  const { newRows, changedRows, refusedRows } = list;
  const pieces = newRows + changedRows;
  if (pieces === 0) {
    return (
      <Notice kind="caution">
        Nothing in this list is new or changed, so there is nothing to bring in.
      </Notice>
    );
  }
  return (
    <FormFrame action={confirmList} label="Bring it in">
      <RequestKey />
      <input type="hidden" name="stockListId" value={list.id} />
      <input type="hidden" name="planSha256" value={list.planSha256} />
      <input type="hidden" name="refusedLines" value={refusedRows} />
      {refusedRows > 0 ? (
        <Choice
          name="leaveRefusedOut"
          legend="Some lines were refused"
          hint="Put them right in the file and bring it in again, or go on without them."
          kind="tick"
          options={[{ value: 'yes', label: leaveWords(refusedRows) }]}
        />
      ) : null}
      <div>
        <SubmitButton pendingText="Bringing it in…">
          {pieces === 1 ? 'Bring in 1 piece' : `Bring in ${pieces.toLocaleString('en-US')} pieces`}
        </SubmitButton>
      </div>
    </FormFrame>
  );
}

function leaveWords(lines: number): string {
  return lines === 1 ? 'Leave the refused line out' : `Leave the ${lines} refused lines out`;
}

/** Says that the stock is another one now, and looks at the list once more. */
export function LookOnceMore({ stockListId }: Readonly<{ stockListId: string }>) {
  return (
    <>
      <Notice kind="caution">The stock changed while you were looking; look once more.</Notice>
      <FormFrame action={lookOnceMore} label="Look once more">
        <RequestKey />
        <input type="hidden" name="stockListId" value={stockListId} />
        <div>
          <SubmitButton>Look once more</SubmitButton>
        </div>
      </FormFrame>
    </>
  );
}
