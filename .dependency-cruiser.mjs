// The rooms from the ground up: a room imports only rooms before it, never a sibling on the same line.
const floors = [
  ['core'],
  ['notation'],
  ['formats', 'imaging', 'video', 'circuit', 'prose', 'planning'],
  ['rehearsal'],
  ['checks'],
  ['editions'],
  ['guide'],
  ['render'],
  ['app'],
  ['outside'],
  ['cli', 'server', 'ui'],
];
const pure = floors.slice(0, 8).flat();

const rooms = floors.flatMap((floor, height) =>
  floor.map((room) => {
    const allowed = new Set([room, ...floors.slice(0, height).flat()]);
    if (room === 'video') allowed.add('imaging');
    if (room === 'cli') allowed.add('server');
    return {
      name: `${room}-imports-only-rooms-below`,
      severity: 'error',
      from: { path: `^src/${room}/` },
      to: { path: '^src/', pathNot: `^src/(${[...allowed].join('|')})/` },
    };
  }),
);

export default {
  forbidden: [
    ...rooms,
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'pure-rooms-touch-no-world',
      severity: 'error',
      from: { path: `^src/(${pure.join('|')}|app)/`, pathNot: '\\.test\\.ts$' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'native-and-heavy-code-stays-outside',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/outside/|\\.test\\.ts$' },
      to: { path: 'node_modules/(sharp|web-tree-sitter|@vscode/tree-sitter-wasm|exifreader)/' },
    },
    {
      name: 'only-the-server-opens-sockets',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/server/|\\.test\\.ts$' },
      to: { path: '^(node:)?(http|https|http2|net|tls|dgram|dns)(/|$)' },
    },
    {
      name: 'no-check-imports-another',
      severity: 'error',
      from: { path: '^src/checks/rules/([^/]+)\\.ts$' },
      to: { path: '^src/checks/rules/', pathNot: '^src/checks/rules/$1\\.ts$' },
    },
    {
      name: 'no-renderer-imports-another',
      severity: 'error',
      from: { path: '^src/render/([^/]+)/' },
      to: { path: '^src/render/', pathNot: '^src/render/($1|shared)/' },
    },
    {
      name: 'src-stands-alone',
      severity: 'error',
      from: { path: '^src/', pathNot: '\\.test\\.ts$' },
      to: { path: '^(tests|demo|bench)/' },
    },
    { name: 'no-unresolved', severity: 'error', from: { path: '^src/' }, to: { couldNotResolve: true } },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: { conditionNames: ['import', 'node', 'default'], exportsFields: ['exports'] },
  },
};
