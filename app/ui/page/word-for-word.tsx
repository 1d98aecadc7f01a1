import css from './page.module.css';

/** A text that is signed or was, each of its lines a paragraph. */
export function WordForWord({ body }: Readonly<{ body: string }>) {
  return (
    <div className={css['word-for-word']}>
      {body.split('\n').map((line, at) => (
        <p key={`${at}-${line.slice(0, 24)}`}>{line}</p>
      ))}
    </div>
  );
}
