import css from './band.module.css';

/** One peg of the band: a thing agreed, made or done, and where it stands. */
export type Peg = Readonly<{
  name: string;
  state: 'filled' | 'next' | 'open';
  /** When it was, or when it is expected, as people say it: "12 May", "about 3 June". */
  when?: string | undefined;
}>;

type BandProps = Readonly<{
  label: string;
  pegs: readonly Peg[];
  /** The promised day, how sure it is, and the day that was told since: "8 August", "tight". */
  promised?:
    Readonly<{ when: string; sure?: string | undefined; told?: string | undefined }> | undefined;
}>;

const said = { filled: 'done', next: 'next', open: 'to come' } as const;

/** A commission's band: its pegs in time from left to right, what is done filled, what is next open. */
export function Band({ label, pegs, promised }: BandProps) {
  return (
    <div className={css['band']}>
      <ol className={css['pegs']} aria-label={label}>
        {pegs.map((peg) => (
          <li
            key={peg.name}
            className={css['peg']}
            data-state={peg.state}
            aria-current={peg.state === 'next' ? 'step' : undefined}
          >
            <span className={css['head']} aria-hidden="true" />
            <span className={css['name']}>{peg.name}</span>
            <span className="heard-only">, {said[peg.state]}</span>
            {peg.when ? <span className={css['when']}>{peg.when}</span> : null}
          </li>
        ))}
      </ol>
      {promised ? (
        <p className={css['promised']}>
          Promised for <strong>{promised.when}</strong>
          {promised.sure ? <span>, {promised.sure}</span> : null}
          {promised.told ? (
            <>
              . A notice says <strong>{promised.told}</strong>
            </>
          ) : null}
        </p>
      ) : null}
    </div>
  );
}
