import type { Template } from '@/lib/clay/rules/template';
import css from './template.module.css';

/** The outline in small, and how the sheets lie over it. */
export function SheetsLying({ template }: Readonly<{ template: Template }>) {
  const { sheets, window, wetWidthUm, wetHeightUm, cutsAtXUm, cutsAtYUm } = template;
  const [first, last] = [sheets[0], sheets.at(-1)];
  if (!first || !last) return null;
  const mm = (um: number) => um / 1_000;
  const whole = {
    width: mm(last.xUm - first.xUm + window.widthUm),
    height: mm(last.yUm - first.yUm + window.heightUm),
  };
  const letter = Math.min(mm(window.widthUm), mm(window.heightUm)) / 3;
  return (
    <figure>
      <svg
        className={css['lying']}
        viewBox={`${mm(first.xUm)} ${mm(first.yUm)} ${whole.width} ${whole.height}`}
        role="img"
        aria-label={`The outline lies over ${sheets.length === 1 ? 'one sheet' : `${sheets.length} sheets, ${template.sheetsAcross} across and ${template.sheetsDown} down`}.`}
      >
        <rect width={mm(wetWidthUm)} height={mm(wetHeightUm)} className={css['outline']} />
        {cutsAtXUm.map((cut) => (
          <line key={cut} x1={mm(cut)} x2={mm(cut)} y2={mm(wetHeightUm)} className={css['cut']} />
        ))}
        {cutsAtYUm.map((cut) => (
          <line key={cut} y1={mm(cut)} y2={mm(cut)} x2={mm(wetWidthUm)} className={css['cut']} />
        ))}
        {sheets.map((sheet) => (
          <g key={sheet.letter} transform={`translate(${mm(sheet.xUm)} ${mm(sheet.yUm)})`}>
            <rect
              width={mm(window.widthUm)}
              height={mm(window.heightUm)}
              className={css['sheet']}
            />
            <text
              x={mm(window.widthUm) / 2}
              y={mm(window.heightUm) / 2 + letter / 3}
              fontSize={letter}
              className={css['letter']}
            >
              {sheet.letter}
            </text>
          </g>
        ))}
      </svg>
      <figcaption className={css['quiet']}>
        Dashes are the sheets; where two of them lie over each other, they show the same.
      </figcaption>
    </figure>
  );
}
