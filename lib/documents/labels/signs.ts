import 'server-only';
import type { Paper } from '../paper';

/** What our hands write for a sign they do not have but that people type. */
const instead: Readonly<Record<string, string>> = { '↑': '^', '⅓': '1/3', '⅔': '2/3' };

/**
 * A text with only those signs that a hand of ours can write: others (emoji, the letters of other
 * scripts) are left out, so that no empty boxes stand on a label. Nothing may be left.
 *
 * @example an otter's face behind a title is left out; a title all in Hebrew leaves nothing
 */
export function onlyKnownSigns(
  paper: Paper,
  text: string,
  face: 'serif' | 'italic' | 'sans' | 'bold',
): string {
  const isKnown = glyphsOf(paper.font(face));
  const written = Array.from(text.normalize('NFC').replace(/\s+/g, ' '), (sign) => {
    if (isKnown(sign)) return sign;
    const other = instead[sign] ?? '';
    return Array.from(other).every(isKnown) ? other : '';
  });
  const plain = written.join('').replace(/\s+/g, ' ').trim();
  return /[\p{L}\p{N}]/u.test(plain) ? plain : '';
}

/** Signs that join or steer other signs, and are nothing by themselves. */
const steering = /\p{Cf}|\p{Cc}/u;

function glyphsOf(paper: Paper): (sign: string) => boolean {
  const has = glyphTest(paper);
  return (sign) => !steering.test(sign) && has(sign.codePointAt(0) ?? 0);
}

/** The font inside of pdfkit knows its glyphs; without it, Latin letters are taken for granted. */
function glyphTest(paper: Paper): (codePoint: number) => boolean {
  const font = inside(inside(paper, '_font'), 'font');
  const has = inside(font, 'hasGlyphForCodePoint');
  if (typeof has !== 'function') return (codePoint) => codePoint < 0x250;
  return (codePoint) => Reflect.apply(has, font, [codePoint]) === true;
}

function inside(thing: unknown, name: string): unknown {
  return typeof thing === 'object' && thing !== null ? Reflect.get(thing, name) : undefined;
}
