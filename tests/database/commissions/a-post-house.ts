import type { AddressInfo } from 'node:net';
import { SMTPServer } from 'smtp-server';

/** A letter as a mail server got it. */
export type Taken = { to: string[]; text: string };

/** How a mail server is today. */
export type Mood = 'takes' | 'refuses' | 'sleeps' | 'is_down';

/** A real mail server on this machine. */
export type PostHouse = {
  url: string;
  taken: Taken[];
  /** The words of the last letter, with the lines put together again that were broken to send it. */
  words: () => string;
  become: (mood: Mood) => Promise<void>;
  close: () => Promise<void>;
};

/** Opens a mail server that takes every letter, until it becomes otherwise. */
export async function openPostHouse(): Promise<PostHouse> {
  const taken: Taken[] = [];
  let mood: Mood = 'takes';
  const server = new SMTPServer({
    disabledCommands: ['AUTH', 'STARTTLS'],
    closeTimeout: 50,
    onConnect: (_session, next) => {
      // One that sleeps says nothing, not even who it is.
      if (mood !== 'sleeps') next();
    },
    onRcptTo: (_address, _session, next) => {
      next(mood === 'refuses' ? new Error('Nobody of that name lives here') : null);
    },
    onData: (stream, session, next) => {
      const parts: Buffer[] = [];
      stream.on('data', (part: Buffer) => parts.push(part));
      stream.on('end', () => {
        const to = session.envelope.rcptTo.map(({ address }) => address);
        taken.push({ to, text: Buffer.concat(parts).toString('utf8') });
        next();
      });
    },
  });
  server.on('error', () => undefined);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.server.address() as AddressInfo;
  const close = () => new Promise<void>((resolve) => server.close(() => resolve()));
  let isOpen = true;
  const closeOnce = async () => {
    if (isOpen) await close();
    isOpen = false;
  };
  return {
    url: `smtp://127.0.0.1:${port}`,
    taken,
    words: () => (taken.at(-1)?.text ?? '').replace(/=\r\n/g, ''),
    become: async (next) => {
      mood = next;
      if (next === 'is_down') await closeOnce();
    },
    close: closeOnce,
  };
}
