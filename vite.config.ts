import { createHash } from 'node:crypto';
import { cpSync, createReadStream, existsSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, normalize, sep } from 'node:path';
import { playwright } from '@vitest/browser-playwright';
import type { Plugin } from 'vite';
import type { ViteUserConfig } from 'vitest/config';
import { defineConfig } from 'vitest/config';
import { chromiumArguments, chromiumPath } from './test/support/chromium.ts';

const root = import.meta.dirname;

/** The demo cabins beside the built workbench, and under the same address while developing. */
function demoData(): Plugin {
  return {
    name: 'adjoin-demo-data',
    configureServer(server) {
      server.middlewares.use('/demo-data', (request, response, next) => {
        const path = normalize(join(root, 'demo-data', decodeURIComponent((request.url ?? '').split('?')[0] ?? '')));
        if (!path.startsWith(join(root, 'demo-data')) || !path.endsWith('.json') || !existsSync(path) || !statSync(path).isFile()) return next();
        response.setHeader('Content-Type', 'application/json');
        createReadStream(path).pipe(response);
      });
    },
    writeBundle({ dir = '' }) {
      cpSync(join(root, 'demo-data'), join(dir, 'demo-data'), {
        recursive: true,
        filter: (path) => !path.includes('generator') && (statSync(path).isDirectory() || path.endsWith('.cabin.json')),
      });
    },
  };
}

/** Builds the service worker beside the page and writes into it which files belong to this version, each with its digest. */
function offline(): Plugin {
  const name = 'service-worker.js';
  return {
    name: 'adjoin-offline',
    apply: 'build',
    buildStart() {
      this.emitFile({ type: 'chunk', id: join(root, 'components', 'platform', 'offline', 'service-worker.ts'), fileName: name });
    },
    writeBundle({ dir = '' }) {
      const files = readdirSync(dir, { recursive: true, encoding: 'utf8' }).map((file) => file.split(sep).join('/'))
        .filter((file) => file !== name && !file.startsWith('demo-data/') && statSync(join(dir, file)).isFile()).sort();
      const digests = Object.fromEntries(files.map((file) => [file, `sha256-${createHash('sha256').update(readFileSync(join(dir, file))).digest('base64')}`]));
      const code = readFileSync(join(dir, name), 'utf8');
      if (!code.includes('BUILT_FILES') || /\b(?:im|ex)port\b\s*[{"'*]/.test(code)) throw new Error(`${name} must stand by itself and ask for the list of files`);
      writeFileSync(join(dir, name), code.replaceAll('BUILT_FILES', () => JSON.stringify(digests)));
    },
  };
}

/** Modules of `src` do nothing but define: one that nothing is used of is left out, tables and all. */
const treeshake = { moduleSideEffects: [{ test: /^(?!.*node_modules).*[\\/]src[\\/]/, sideEffects: false }] };

export default defineConfig(async ({ mode }): Promise<ViteUserConfig> => {
  if (mode === 'cli') {
    let chunks = '';
    return {
      publicDir: false,
      plugins: [{
        name: 'adjoin-command-line-files',
        configResolved: (config) => { chunks = join(root, config.build.outDir, 'cli'); },
        renderStart: () => rmSync(chunks, { recursive: true, force: true }),
        // The solver looks for its WebAssembly beside the chunk that loads it.
        writeBundle: () => cpSync(join(root, 'node_modules', 'highs', 'build', 'highs.wasm'), join(chunks, 'highs.wasm')),
      }],
      build: {
        ssr: 'src/cli/main.ts', target: 'node20', outDir: 'dist', emptyOutDir: false,
        rolldownOptions: { checks: { pluginTimings: false }, treeshake, output: { entryFileNames: 'adjoin.mjs', chunkFileNames: 'cli/[name]-[hash].mjs' } },
      },
      ssr: { noExternal: true },
    };
  }
  if (mode === 'bench') {
    return {
      publicDir: false,
      build: { ssr: 'test/bench/main.ts', target: 'node20', outDir: 'dist/bench', emptyOutDir: true, rolldownOptions: { output: { entryFileNames: 'bench.mjs' } } },
    };
  }
  if (mode === 'library') {
    return {
      publicDir: false,
      build: {
        ssr: 'src/index.ts', target: 'node20', outDir: 'dist/library', emptyOutDir: true,
        rolldownOptions: { checks: { pluginTimings: false }, treeshake, output: { entryFileNames: 'adjoin.mjs' } },
      },
    };
  }
  const testing = process.env['VITEST'] !== undefined;
  return {
    base: './',
    publicDir: false,
    plugins: [demoData(), offline()],
    build: { outDir: 'dist/app', emptyOutDir: true, target: 'es2023', rolldownOptions: { checks: { pluginTimings: false }, treeshake } },
    worker: { format: 'es', rolldownOptions: { treeshake } },
    test: {
      // A busy machine draws late what comes in the end.
      expect: { poll: { timeout: 20_000 } },
      projects: [
        {
          extends: true,
          test: {
            name: 'core', environment: 'node', setupFiles: ['test/support/formulas.ts'],
            include: ['test/**/*.test.ts'], exclude: ['test/**/*.browser.test.ts'],
            testTimeout: 60_000,
          },
        },
        {
          extends: true,
          optimizeDeps: { include: ['lit', 'lit/async-directive.js', 'lit/directive.js', 'lit/directives/live.js', 'lit/directives/repeat.js', 'd3', 'mathjs/number', 'axe-core', 'culori', 'fflate'] },
          test: {
            name: 'browser', setupFiles: ['test/support/formulas.ts'], include: ['test/**/*.browser.test.ts'], testTimeout: 60_000,
            browser: {
              enabled: true, headless: true, screenshotFailures: false,
              provider: playwright({ launchOptions: testing ? { executablePath: await chromiumPath(), args: chromiumArguments } : {} }),
              instances: [{ browser: 'chromium' }],
            },
          },
        },
      ],
    },
  };
});
