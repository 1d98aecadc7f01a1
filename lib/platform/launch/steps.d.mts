export declare const root: string;
export declare const withParent: readonly string[];
export declare function inTurn<Answer>(
  work: () => Promise<Answer>,
  signal: AbortSignal,
): Promise<Answer>;
export declare function during<Answer>(
  title: string,
  work: (say: (sentence: string) => void) => Promise<Answer>,
): Promise<Answer>;
export declare function run(
  program: string,
  words: readonly string[],
  how: {
    fails: string;
    signal?: AbortSignal;
    env?: Readonly<Record<string, string>>;
    hear?: (chunk: string) => void;
  },
): Promise<void>;
