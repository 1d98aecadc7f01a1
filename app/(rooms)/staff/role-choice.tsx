import { Choice } from '@/app/ui/form/choice';
import { roles, roleWords, type Role } from '@/lib/access/rules';

/** What someone is here: one part or several, each in words. */
export function RoleChoice({ held }: Readonly<{ held: readonly Role[] }>) {
  return (
    <Choice
      name="roles"
      legend="What they are here"
      kind="tick"
      layout="down"
      defaultValue={held.join(',')}
      options={roles.map((role) => ({
        value: role,
        label: roleWords[role].name,
        hint: roleWords[role].does,
      }))}
    />
  );
}
