/** The rules that hold always, asked in plain SQL; each answers with what breaks it. */
export const alwaysTrue: Readonly<Record<string, string>> = {
  'on hand is the sum of its movements, and never below zero': `
    select l."skuId" from "StockLevel" l where l."onHand" < 0 or l."onHand" <>
      (select coalesce(sum(m.quantity), 0) from "StockMovement" m
       where m."skuId" = l."skuId" and m."placeId" = l."placeId")`,
  'held is the sum of the open holds, and never above what is on hand': `
    select l."skuId" from "StockLevel" l where l.held > l."onHand" or l.held <>
      (select coalesce(sum(h.quantity), 0) from "Hold" h
       where h."skuId" = l."skuId" and h."placeId" = l."placeId" and h."endedAt" is null)`,
  'every entry sums to zero': `
    select e.number from "JournalEntry" e left join "Posting" p on p."entryId" = e.id
    group by e.id having count(p.id) < 2 or sum(p."amountCents") <> 0`,
  'lines, taxes and tenders make up the sale': `
    select s.number from "Sale" s where s."totalCents" <>
      (select sum("netCents" + "taxCents") from "SaleLine" where "saleId" = s.id)
      or s."totalCents" <> (select sum("amountCents") from "Tender" where "saleId" = s.id)
      or s."taxCents" <> coalesce((select sum("taxCents") from "SaleTax" where "saleId" = s.id), 0)`,
  'no more comes back of a line than was sold, and no more tax than was charged': `
    select l.id from "SaleLine" l join "GoodsReturnLine" b on b."saleLineId" = l.id group by l.id
    having sum(b.quantity) > l.quantity or sum(b."netCents") > l."netCents"
      or sum(b."taxCents") > l."taxCents"
      or (sum(b.quantity) = l.quantity and sum(b."taxCents") <> l."taxCents")`,
  'no more goes back than was paid that way': `
    select t.id from "Tender" t join "Refund" r on r."tenderId" = t.id group by t.id
    having sum(r."amountCents") > t."amountCents"`,
  'a return gives back its net and its tax, less its fee': `
    select r.number from "GoodsReturn" r where r."totalCents" <> r."netCents" + r."taxCents"
      - r."feeCents" or r."totalCents" <>
      (select sum("amountCents") from "Refund" where "returnId" = r.id)`,
  'the tax held is what was charged less what went back': `
    select 1 where coalesce((select sum("taxCents") from "SaleTax"), 0)
      - coalesce((select sum("taxCents") from "GoodsReturnTax"), 0) <>
      -coalesce((select sum("amountCents") from "Posting" where "accountCode" = '2100'), 0)`,
  'cash in the drawer is what was taken less what was given back': `
    select 1 where coalesce((select sum("amountCents") from "Tender" where kind = 'cash'), 0)
      - coalesce((select sum("amountCents") from "Refund" where kind = 'cash'), 0) <>
      coalesce((select sum("amountCents") from "Posting" where "accountCode" = '1000'), 0)`,
  'money held for layaways is what was paid for them and not used': `
    select l.number from "Layaway" l where layaway_money(l.id) < 0 or layaway_money(l.id) <>
      -coalesce((select sum("amountCents") from "Posting"
        where "accountCode" = '2010' and "layawayId" = l.id), 0)`,
  'what is on a voucher is the sum of its movements, and is what the books owe': `
    select c.code from "Credit" c where c."balanceCents" <>
      (select coalesce(sum("amountCents"), 0) from "CreditMovement" where "creditId" = c.id)
      or c."balanceCents" <> -coalesce((select sum("amountCents") from "Posting"
        where "creditId" = c.id), 0)`,
  'as many pieces left as were sold, and none came back that was not': `
    select 1 where coalesce((select sum(quantity) from "SaleLine" where kind = 'piece'), 0) <>
      -coalesce((select sum(quantity) from "StockMovement" where reason = 'sold'), 0)
    union all
    select 1 from "StockMovement" where reason = 'returned' and "returnLineId" is null`,
  'a transfer loses nothing on the way': `
    select "transferId" from "StockMovement" where "transferId" is not null
    group by "transferId", "skuId" having sum(quantity) <> 0`,
};
