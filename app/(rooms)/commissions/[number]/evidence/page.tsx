import { ButtonLink } from '@/app/ui/button/button';
import { DayText } from '@/app/ui/figures/day-text';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Section } from '@/app/ui/page/section';
import { Hung, Wall } from '@/app/ui/piece/piece-hanging';
import { Picture } from '@/app/ui/piece/picture';
import { requireActor } from '@/lib/access/reads';
import { readEvidence } from '@/lib/commissions/reads/evidence/evidence';
import { marksOf, marksSentence, type Entry } from '@/lib/commissions/rules/evidence/chapters';
import { readSheet, type SheetParams } from '../read-sheet';
import css from '../../commissions.module.css';

export const metadata = { title: 'The evidence' };

/** Everything that is kept of a commission, in the order one would prove it. */
export default async function EvidencePage({ params }: Readonly<{ params: SheetParams }>) {
  const actor = await requireActor('commissions.see');
  const sheet = await readSheet(actor, params);
  const chapters = await readEvidence(actor, sheet);
  const marks = marksOf(chapters);
  const { number, title } = sheet;
  return (
    <>
      <PageHead
        title="The evidence"
        lead="What was asked, offered, shown, approved, agreed, told, made, paid and handed over."
        back={{ href: `/commissions/${number}`, name: `${title}, commission ${number}` }}
      />
      <Notice kind={marks.broken.length === 0 ? 'done' : 'caution'}>{marksSentence(marks)}</Notice>
      <p className={css['ways']}>
        <ButtonLink href={`/commissions/${number}/evidence/pdf`}>All of it as one PDF</ButtonLink>
        <ButtonLink href={`/commissions/${number}/certificate`} variant="quiet">
          Certificate of authenticity
        </ButtonLink>
        <ButtonLink href={`/commissions/${number}/care/pdf`} variant="quiet">
          How to look after it
        </ButtonLink>
      </p>
      {chapters.map(({ title: name, entries }) => (
        <Section key={name} title={name}>
          {entries.length === 0 ? <p className={css['quiet']}>Nothing.</p> : null}
          {entries.map((entry, at) => (
            <OneEntry key={String(at)} entry={entry} />
          ))}
        </Section>
      ))}
    </>
  );
}

function OneEntry({ entry }: Readonly<{ entry: Entry }>) {
  const { title, on, lines, pictures, drawing, mark } = entry;
  return (
    <article className={css['entry']}>
      <h3>{title}</h3>
      {on ? (
        <p className={css['quiet']}>
          <DayText day={on} style="long" />
        </p>
      ) : null}
      {lines.map((line, at) => (
        <p key={String(at)}>{line}</p>
      ))}
      {pictures.length > 0 ? (
        <Wall label={`Pictures: ${title}`}>
          {pictures.map(({ fileId, ...picture }) => (
            <Hung key={fileId}>
              <Picture {...picture} src={`/files/${fileId}`} size="hung" />
            </Hung>
          ))}
        </Wall>
      ) : null}
      {drawing ? (
        <Picture
          src={`/files/${drawing}`}
          alt={`The signature under ${title}`}
          width={720}
          height={320}
          size="hung"
        />
      ) : null}
      {mark ? (
        <p className={css['quiet']}>
          {mark.fits ? '✓ fits its mark ' : '✕ does not fit its mark '}
          <code>{mark.sha256.slice(0, 16)}</code>
        </p>
      ) : null}
    </article>
  );
}
