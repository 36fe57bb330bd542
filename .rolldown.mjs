// The command, and the threads that help it: an entry each, because a thread is started from a file of its own.
// biome-ignore lint/style/noDefaultExport: the bundler reads its settings from the default export.
export default {
  input: { hushwright: 'src/main.ts', 'search-worker': 'src/commands/search-worker.ts' },
  platform: 'node',
  // It starts threads from files of its own, so it must stay where it was installed.
  external: ['tinypool'],
  output: {
    dir: 'dist',
    format: 'esm',
    minify: true,
    cleanDir: true,
    entryFileNames: '[name].js',
    chunkFileNames: '[name].js',
  },
  logLevel: 'warn',
};
