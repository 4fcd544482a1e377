/**
 * Of pdf-lib what is asked for alone. Its modules do nothing as they are loaded, but its package does not say so: without this each
 * program reads back fonts, pictures, forms and what reads a document.
 */
export const usedAlone = {
  name: 'used-alone',
  setup(build) {
    build.onResolve({ filter: /./ }, async ({ path, importer, kind, resolveDir, pluginData }) => {
      const theirs = path === 'pdf-lib' || /node_modules\/pdf-lib\/es\//.test(importer)
      if (!theirs || pluginData === usedAlone) return
      const found = await build.resolve(path, { kind, importer, resolveDir, pluginData: usedAlone })
      return found.errors.length > 0 ? found : { path: found.path, sideEffects: false }
    })
  },
}

export const alias = {
  'pdf-lib': 'pdf-lib/es/core/index.js',
  '@pdf-lib/standard-fonts': './src/write/left-out.ts',
  pako: './src/write/left-out.ts',
}
