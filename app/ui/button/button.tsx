import type { ComponentProps, ReactNode } from 'react';
import { classes } from '@/app/ui/classes';
import css from './button.module.css';
import { Way } from './way';

/** How much a button weighs: the one thing to do, another thing, or a thing that takes away. */
export type ButtonVariant = 'main' | 'quiet' | 'danger';

type ButtonLook = Readonly<{
  variant?: ButtonVariant | undefined;
  size?: 'plain' | 'counter' | undefined;
  /** As wide as what it stands in. */
  wide?: boolean | undefined;
}>;

/** The class of a button, for the rare control that must be something else. */
export function buttonClass({ variant = 'main', size, wide }: ButtonLook): string {
  return classes(
    css['button'],
    css[variant],
    size === 'counter' && css['counter'],
    wide && css['wide'],
  );
}

type ButtonProps = ButtonLook & Omit<ComponentProps<'button'>, 'className'>;

/** A button: stands up by a hair, and goes down when it is pressed. */
export function Button({ variant, size, wide, type = 'button', ...rest }: ButtonProps) {
  return <button {...rest} type={type} className={buttonClass({ variant, size, wide })} />;
}

type ButtonLinkProps = ButtonLook &
  Readonly<{ href: string; children: ReactNode; download?: boolean | undefined }>;

/** A link that weighs as much as a button. With `download`, the browser keeps the file. */
export function ButtonLink({ href, children, download, ...look }: ButtonLinkProps) {
  return (
    <Way href={href} download={download} className={buttonClass(look)}>
      {children}
    </Way>
  );
}
