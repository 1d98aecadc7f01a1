import Link from 'next/link';
import { ButtonLink } from '@/app/ui/button/button';
import { SubmitButton } from '@/app/ui/button/submit-button';
import { Money } from '@/app/ui/figures/money';
import { FormFrame } from '@/app/ui/form/form-frame';
import { RequestKey } from '@/app/ui/form/request-key';
import { Section } from '@/app/ui/page/section';
import type { TagToRewrite } from '@/lib/catalogue/reads/prices';
import { kindWords } from '@/lib/catalogue/rules';
import { formatSize, type LengthSystem } from '@/lib/units/rules';
import { tick } from './actions';
import css from './prices.module.css';

type TagsProps = Readonly<{
  tags: readonly TagToRewrite[];
  lengthUnit: LengthSystem;
  mayTick: boolean;
}>;

/** How many labels are asked for by one address. */
const labelsMost = 60;

/** The tags that say an older price, to be ticked off as they are written; printed as a list. */
export function TagsToRewrite({ tags, lengthUnit, mayTick }: TagsProps) {
  const here = tags.filter((tag) => tag.pieces > 0).slice(0, labelsMost);
  const labels = here.map((tag) => `sku=${tag.code}`).join('&');
  return (
    <Section
      title="Tags to write anew"
      act={
        here.length === 0 ? null : (
          <ButtonLink href={`/stock/labels?${labels}`} variant="quiet">
            Print these labels
          </ButtonLink>
        )
      }
    >
      <FormFrame action={tick} label="Tags to write anew">
        <RequestKey />
        <ul className={css['tags']}>
          {tags.map((tag) => (
            <li key={tag.skuId}>
              <Tag tag={tag} lengthUnit={lengthUnit} mayTick={mayTick} />
            </li>
          ))}
        </ul>
        {mayTick ? <SubmitButton size="counter">These are written</SubmitButton> : null}
      </FormFrame>
    </Section>
  );
}

type TagProps = Readonly<{ tag: TagToRewrite; lengthUnit: LengthSystem; mayTick: boolean }>;

function Tag({ tag, lengthUnit, mayTick }: TagProps) {
  const { code, title, colourway, kind, pieces, tagCents, priceCents } = tag;
  const many = pieces === 0 ? 'none anywhere' : pieces === 1 ? '1 piece' : `${pieces} pieces`;
  return (
    <label className={css['tag']}>
      {mayTick ? <input type="checkbox" name="skuIds" value={tag.skuId} /> : null}
      <span>
        <span className={css['title']}>
          <Link href={`/stock/${code}`}>{title}</Link>
        </span>
        <span className={css['what']}>
          {kindWords(kind)}, {colourway}, {formatSize({ ...tag, depthUm: null }, lengthUnit)} ·{' '}
          {code} · {many}
        </span>
      </span>
      <span className={css['prices']}>
        <s>
          <span className="heard-only">It says </span>
          <Money cents={tagCents} />
        </s>
        <span className="heard-only">, and is to say </span>
        <Money cents={priceCents} size="strong" />
      </span>
    </label>
  );
}
