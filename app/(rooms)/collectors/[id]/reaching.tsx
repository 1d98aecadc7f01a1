import { Facts } from '@/app/ui/page/facts';
import { Section } from '@/app/ui/page/section';
import type { CollectorPage } from '@/lib/collectors/reads';
import { addressLine } from '@/lib/collectors/rules';
import css from '../collectors.module.css';

/** How a collector is reached: telephone, mail, and their own address. */
export function Reaching({ collector }: Readonly<{ collector: CollectorPage }>) {
  const { phone, email, note } = collector;
  return (
    <Section title="How to reach them">
      <Facts
        facts={[
          { name: 'Telephone', value: phone && <a href={`tel:${phone}`}>{phone}</a> },
          {
            name: 'Mail',
            value: email && (
              <a href={`mailto:${email}`} className={css['mail']}>
                {email}
              </a>
            ),
          },
          { name: 'Address', value: addressLine(collector) },
        ]}
      />
      {note ? <p className={css['note']}>{note}</p> : null}
    </Section>
  );
}
