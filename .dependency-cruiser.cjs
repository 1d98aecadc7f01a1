/** Areas from the ground up: an area may import only areas that stand before it. */
const floors = [
  ['money', 'units', 'dates'],
  ['clay', 'colour', 'tax', 'walls', 'freight'],
  ['access', 'files', 'audit'],
  ['catalogue', 'collectors', 'glazes'],
  ['stock', 'ledger'],
  ['vouchers', 'holds'],
  ['sales', 'studio'],
  ['returns', 'layaway', 'orders', 'fairs', 'consignment', 'wholesale', 'drawer'],
  ['commissions', 'workings'],
  ['counter', 'data', 'installation', 'sending'],
  ['reports', 'documents'],
];
const above = (floor) => floors.slice(floor + 1).flat();
const upward = floors.slice(0, -1).map((areas, floor) => ({
  name: `floor-${floor + 1}-looks-down-only`,
  severity: 'error',
  from: { path: `^lib/(${areas.join('|')})/` },
  to: { path: `^lib/(${above(floor).join('|')})/` },
}));

module.exports = {
  floors,
  forbidden: [
    ...upward,
    {
      name: 'platform-is-the-ground',
      severity: 'error',
      from: { path: '^lib/platform/' },
      to: { path: '^lib/(?!platform/)' },
    },
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'rules-are-pure',
      severity: 'error',
      from: { path: '^lib/[^/]+/(rules|input)' },
      to: {
        pathNot: [
          '^lib/[^/]+/(rules|input)',
          '^lib/platform/(result|invariant)[.]ts$',
          '^node_modules/(zod|date-fns|@date-fns/tz|maxrects-packer|ical-generator)/',
        ],
      },
    },
    {
      name: 'reads-do-not-write',
      severity: 'error',
      from: { path: '^lib/[^/]+/reads' },
      to: { path: '^lib/([^/]+/writes|platform/db/transaction)' },
    },
    {
      name: 'generated-client-stays-in-db',
      severity: 'error',
      from: { pathNot: '^(lib/platform/db/|lib/[^/]+/(reads|writes)|seed/|tests/|generated/)' },
      to: { path: '^generated/' },
    },
    {
      name: 'app-goes-through-lib',
      severity: 'error',
      from: { path: '^(app/|proxy[.]ts)' },
      to: { path: '^(lib/platform/db/|generated/|prisma/|seed/|tests/)' },
    },
    {
      name: 'only-actions-write',
      severity: 'error',
      from: { path: '^app/', pathNot: '/(actions|route)[.]ts$' },
      to: { path: '^lib/[^/]+/writes' },
    },
    {
      name: 'lib-knows-no-screen',
      severity: 'error',
      from: { path: '^lib/' },
      to: {
        path: '^app/|^node_modules/(react|react-dom|next)/',
        pathNot: '^node_modules/(react/index|next/(headers|navigation))',
      },
    },
    {
      name: 'product-never-imports-tests',
      severity: 'error',
      from: { path: '^(app|lib|seed)/' },
      to: { path: '^tests/' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^tests/helpers/sabotage/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
  },
};
