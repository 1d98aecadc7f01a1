import { ok, refuse, type Result } from '@/lib/platform/result';

/** The shortest password, in characters. */
export const passwordLengthLeast = 12;
/** The longest password, in characters. */
export const passwordLengthMost = 128;

/** Why a new password was not taken. */
export type PasswordRefusal =
  | { code: 'password_too_short'; lengthLeast: number }
  | { code: 'password_too_long'; lengthMost: number }
  | { code: 'password_too_common' }
  | { code: 'password_is_the_name' };

/**
 * Whether a password may be used here. It is brought into one form (NFKC), so that the same
 * letters typed on another keyboard open the same door.
 *
 * @param names what people can guess: the person's name and sign-in name
 * @returns the password as it is to be hashed; refuses, in this order: shorter than 12 characters,
 *   longer than 128, on the list of the commonest or a simple pattern, made of the name
 * @source NIST SP 800-63B, section 5.1.1.2: length over mixture, and a list of what is too common
 * @example readPassword('kiln kiln kiln', []) // refused: one word again and again
 */
export function readPassword(
  typed: string,
  names: readonly string[],
): Result<string, PasswordRefusal> {
  const password = oneForm(typed);
  const length = Array.from(password).length;
  if (length < passwordLengthLeast) {
    return refuse({ code: 'password_too_short', lengthLeast: passwordLengthLeast });
  }
  if (length > passwordLengthMost) {
    return refuse({ code: 'password_too_long', lengthMost: passwordLengthMost });
  }
  const bare = bareOf(password);
  if (isCommon(bare)) return refuse({ code: 'password_too_common' });
  if (names.some((name) => isMadeOf(bare, bareOf(name)))) {
    return refuse({ code: 'password_is_the_name' });
  }
  return ok(password);
}

/** A typed password in the one form (NFKC) in which passwords are hashed and compared. */
export function oneForm(typed: string): string {
  return typed.normalize('NFKC');
}

/** Says in a full sentence why a new password was not taken. */
export function passwordRefusalMessage(refusal: PasswordRefusal): string {
  switch (refusal.code) {
    case 'password_too_short':
      return `Choose at least ${refusal.lengthLeast} characters; three or four words are easy to keep.`;
    case 'password_too_long':
      return `At most ${refusal.lengthMost} characters can be kept.`;
    case 'password_too_common':
      return 'This is one of the first that a stranger would try. Choose another.';
    case 'password_is_the_name':
      return 'A stranger would try the name first. Choose something else.';
  }
}

/** Long passwords that are used most, from memory; shorter ones are refused for their length. */
const commonest = new Set(
  `123456789012 1234567890123 12345678901234 1234567890123456 123123123123 111111111111
  000000000000 121212121212 123456123456 123456654321 987654321098 0987654321234 qwertyuiop12
  qwertyuiop123 qwerty123456 qwertyqwerty qwertyuiopas qwertyuiopasdfgh 1qaz2wsx3edc 1q2w3e4r5t6y
  zaq12wsxcde3 asdfghjkl123 asdfasdfasdf zxcvbnm12345 passwordpassword password1234 password12345
  password123456 passw0rd1234 mypassword123 newpassword1 changemeplease changeme1234 letmein12345
  letmeinplease iloveyou1234 iloveyou12345 iloveyouforever welcome12345 welcome123456
  administrator adminadmin12 admin1234567 sunshine1234 princess1234 football1234 baseball1234
  superman1234 michael12345 charlie12345 trustno1trustno1 abcdefghijkl abcdefghijklmnop
  abc123abc123 abcd1234abcd a1b2c3d4e5f6 q1w2e3r4t5y6 correcthorse correcthorsebatterystaple
  thisisapassword monkey123456 dragon123456 master123456 secret123456 computer1234 internet1234
  whatever1234 startrek1234 ceramics1234 pottery12345`.split(/\s+/),
);

function bareOf(text: string): string {
  return oneForm(text)
    .toLowerCase()
    .replace(/[\s._-]/g, '');
}

function isCommon(bare: string): boolean {
  return commonest.has(bare) || /^(.{0,6})\1+$/.test(bare) || isRun(bare);
}

/** Each character one after the last, as on a ruler: 23456789…, or backwards. */
function isRun(bare: string): boolean {
  const steps = Array.from(bare, (letter, at) => {
    const before = bare[at - 1];
    return before === undefined ? 0 : letter.charCodeAt(0) - before.charCodeAt(0);
  });
  return steps.slice(1).every((step) => step === 1) || steps.slice(1).every((step) => step === -1);
}

/** The name alone, or the name with a few figures or marks about it. */
function isMadeOf(bare: string, name: string): boolean {
  if (name.length < 3 || !bare.includes(name)) return false;
  return /^[^a-z]*$/.test(bare.replaceAll(name, ''));
}
