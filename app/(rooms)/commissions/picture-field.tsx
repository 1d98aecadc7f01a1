import { Field } from '@/app/ui/form/field';

type PictureFieldProps = Readonly<{
  name: string;
  label: string;
  hint?: string | undefined;
  several?: boolean | undefined;
}>;

/** Asks for a picture, or several: from the camera of a telephone or from what is kept there. */
export function PictureField({ name, label, hint, several }: PictureFieldProps) {
  return (
    <Field
      name={name}
      label={label}
      kind="file"
      accept="image/*"
      multiple={several}
      hint={hint ?? 'JPEG, PNG or WebP; a telephone can take it now.'}
      optional={several}
    />
  );
}
