import { freshKey } from '@/app/ui/form/fresh-key';
import { KeyInput } from '@/app/ui/form/key-input';

/**
 * Makes a form's command happen once: a hidden uuid, made when the form is drawn. Put one into
 * every form that writes money or stock.
 */
export function RequestKey({ name }: Readonly<{ name?: string | undefined }>) {
  return <KeyInput value={freshKey()} name={name} />;
}
