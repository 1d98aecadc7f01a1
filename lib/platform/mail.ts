import 'server-only';
import { createTransport } from 'nodemailer';
import { readEnvironment } from './env';
import { ok, refuse, type Result } from './result';

/** A letter as it goes out: plain words, to one address. */
export type Letter = Readonly<{
  toName: string;
  toAddress: string;
  subject: string;
  words: string;
  /** The gallery, to which an answer goes. */
  from: Readonly<{ name: string; address: string }>;
}>;

/** Why a letter did not go out, in a full sentence. */
export type MailRefusal = { code: 'not_set_up' | 'not_sent'; why: string };

/** How long a mail server may take for each thing it is asked, in milliseconds. */
export const mailPatience = { connectionMs: 8_000, greetingMs: 8_000, socketMs: 15_000 } as const;

/** Whether the gallery has a mail server; without one, letters are copied and sent by hand. */
export function mailIsSetUp(): boolean {
  return readEnvironment().SMTP_URL !== undefined;
}

/**
 * Whether a text is one mail address and nothing more: no name, no second address, no line end.
 *
 * @source RFC 5321, 4.5.3.1: at most 64 letters before the sign and 254 in all; common practice for
 *   the rest: what the gallery's collectors have, not everything that the standard would take
 * @example isOneAddress('marit@example.org\nBcc: all@example.org') // false
 */
export function isOneAddress(text: string): boolean {
  return (
    text.length <= 254 && /^[^\s@<>()[\],;:\\"]{1,64}@[^\s@<>()[\],;:\\"]+\.[^\s@.]{2,}$/.test(text)
  );
}

/** A text for the head of a letter: whatever would end a line, or cannot be seen, is a space. */
export function oneLine(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ').trim();
}

/**
 * Hands a letter to the gallery's mail server, and waits until it is taken or not.
 *
 * Nothing in name, subject or address can add to the head of the letter. Never throws for what a
 * mail server does.
 *
 * @returns refuses `not_set_up`, or `not_sent` with the reason in words
 */
export async function sendMail(
  letter: Letter,
  server: string | undefined = readEnvironment().SMTP_URL,
  patience: Readonly<Record<keyof typeof mailPatience, number>> = mailPatience,
): Promise<Result<true, MailRefusal>> {
  if (!server) return refuse({ code: 'not_set_up', why: 'No mail server is set up.' });
  const from = readEnvironment().MAIL_FROM ?? letter.from.address;
  for (const address of [letter.toAddress, from]) {
    if (!isOneAddress(address)) return notSent(`${oneLine(address)} is not a mail address.`);
  }
  const transport = createTransport({
    ...serverOf(server),
    connectionTimeout: patience.connectionMs,
    greetingTimeout: patience.greetingMs,
    socketTimeout: patience.socketMs,
    disableFileAccess: true,
    disableUrlAccess: true,
  });
  try {
    await transport.sendMail({
      from: { name: oneLine(letter.from.name), address: from },
      ...(letter.from.address === from ? {} : replyTo(letter.from.address)),
      to: { name: oneLine(letter.toName), address: letter.toAddress },
      subject: oneLine(letter.subject),
      text: letter.words,
    });
    return ok(true);
  } catch (error) {
    return notSent(whyOf(error));
  } finally {
    transport.close();
  }
}

/**
 * The mail server of an address, taken apart here: with the address as it is, the library would
 * leave every other setting out, the time-outs too.
 */
function serverOf(address: string) {
  const { protocol, hostname, port, username, password } = new URL(address);
  const secure = protocol === 'smtps:';
  const host = hostname.replace(/^\[|\]$/g, '');
  const auth = { user: asTyped(username), pass: asTyped(password) };
  return {
    ...{ host, secure, port: port ? Number(port) : secure ? 465 : 587 },
    // A password does not leave this machine in the clear.
    requireTLS: username !== '' && !['localhost', '127.0.0.1', '::1'].includes(host),
    ...(username ? { auth } : {}),
  };
}

function asTyped(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

function replyTo(address: string): { replyTo?: string } {
  return isOneAddress(address) ? { replyTo: address } : {};
}

function notSent(why: string): Result<never, MailRefusal> {
  return refuse({ code: 'not_sent', why });
}

const reasons: Readonly<Record<string, string>> = {
  EENVELOPE: 'The mail server does not take letters to that address.',
  EAUTH: 'The mail server did not take the name and password that are set up.',
  EDNS: 'The mail server was not found.',
  ECONNECTION: 'The mail server was not reached.',
  ESOCKET: 'The mail server was not reached.',
  ECONNREFUSED: 'The mail server was not reached.',
  ETIMEDOUT: 'The mail server took too long to answer.',
  ETLS: 'No safe connection to the mail server came about.',
  EMESSAGE: 'The mail server did not take the letter.',
};

/** Only the kind of fault is told: what a server says may hold the name it was asked with. */
function whyOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return reasons[code] ?? 'The mail server did not take the letter.';
}
