import { Table } from '@/app/ui/figures/table';
import { isAllowed, permissions, roles, roleWords, type Permission } from '@/lib/access/rules';

/** The table of who may do what, in words. */
export function AccessTable() {
  const all = Object.keys(permissions) as Permission[];
  return (
    <Table
      caption="Who may do what"
      captionHeardOnly
      columns={[{ name: 'May' }, ...roles.map((role) => ({ name: roleWords[role].name }))]}
      rows={all.map((permission) => ({
        key: permission,
        cells: [
          permissions[permission].words,
          ...roles.map((role) => (isAllowed([role], permission) ? 'yes' : <No key={role} />)),
        ],
      }))}
    />
  );
}

function No() {
  return (
    <>
      <span aria-hidden="true">–</span>
      <span className="heard-only">no</span>
    </>
  );
}
