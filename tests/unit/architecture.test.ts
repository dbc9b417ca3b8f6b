import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s[^'";]*?from\s*'([^']+)'|import\(\s*'([^']+)'\s*\)|(?:^|\n)import\s+'([^']+)'/g;

interface SourceFile {
  path: string;
  text: string;
  imports: string[];
}

function sources(folder: string): SourceFile[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((item) => item.isFile() && /\.tsx?$/.test(item.name))
    .map((item) => join(item.parentPath, item.name))
    .filter((path) => !/node_modules|\.wxt|\.output|\/dist\//.test(path))
    .map((path) => {
      const text = readFileSync(path, 'utf8');
      const imports = [...text.matchAll(IMPORT)].map((m) => m[1] ?? m[2] ?? m[3] ?? '');
      return { path: relative(root, path), text, imports };
    });
}

const core = sources('shared-core/src');
const ui = sources('shared-core/ui');
const daemon = sources('daemon/src');
const dashboard = sources('daemon/dashboard');
const extension = sources('extension');

/** Folder of shared-core/src → the folders it may import from. What stands lower may not know what stands higher. */
const LADDER: Record<string, readonly string[]> = {
  records: [],
  units: [],
  foods: ['records', 'units'],
  changes: ['records'],
  protocol: ['changes', 'records'],
  trend: [],
  maintenance: ['trend', 'foods', 'units'],
  body: ['trend', 'maintenance', 'foods', 'units', 'records'],
  lifts: ['trend', 'units', 'records'],
  call: ['trend', 'maintenance', 'body', 'lifts', 'foods', 'units', 'records'],
  season: ['records', 'call', 'units'],
  targets: ['season', 'records', 'call', 'foods', 'units', 'body', 'maintenance'],
  views: [
    'changes',
    'records',
    'season',
    'targets',
    'call',
    'body',
    'lifts',
    'foods',
    'maintenance',
    'trend',
    'units',
  ],
};

function folderOf(path: string): string {
  return path.split('/')[2] ?? '';
}

describe('architecture', () => {
  it('finds the sources it speaks about', () => {
    for (const set of [core, ui, daemon, dashboard, extension]) expect(set.length).toBeGreaterThan(0);
  });

  it('keeps shared-core/src pure: no package but zod, no clock, no chance, no page, no file', () => {
    for (const file of core) {
      for (const name of file.imports)
        expect(name, `${file.path} imports ${name}`).toMatch(/^(\.{1,2}\/|zod\/mini$)/);
      const code = file.text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');
      expect(code, `${file.path} reads a clock, chance or the page`).not.toMatch(
        /\bDate\.now\(|\bnew Date\(\)|Math\.random|\bfetch\(|\bdocument\.|\bwindow\.|\blocalStorage\b|performance\.now/,
      );
    }
  });

  it('lets imports in shared-core/src point only down the ladder', () => {
    for (const file of core) {
      const from = folderOf(file.path);
      const allowed = LADDER[from];
      expect(allowed, `add “${from}” to the ladder in this test, and to DEVELOPERS.md`).toBeDefined();
      for (const name of file.imports.filter((n) => n.startsWith('.'))) {
        const target = relative(join(root, 'shared-core/src'), resolve(root, dirname(file.path), name));
        const to = target.split('/')[0] ?? '';
        expect(to === from || allowed?.includes(to), `${file.path} → ${target}`).toBe(true);
      }
    }
  });

  it('has no circle of imports', () => {
    const graph = new Map(
      [...core, ...ui, ...daemon, ...dashboard, ...extension].map((file) => [
        file.path,
        file.imports.flatMap((name) => {
          if (name.startsWith('.')) return [relative(root, resolve(root, dirname(file.path), name))];
          if (name.startsWith('@platewright/core/ui/'))
            return [name.replace('@platewright/core/', 'shared-core/')];
          if (name.startsWith('@platewright/core/'))
            return [name.replace('@platewright/core/', 'shared-core/src/')];
          return [];
        }),
      ]),
    );
    const done = new Set<string>();
    const visit = (path: string, trail: string[]): void => {
      expect(trail.includes(path), `circle: ${[...trail, path].join(' → ')}`).toBe(false);
      if (done.has(path)) return;
      for (const next of graph.get(path) ?? []) visit(next, [...trail, path]);
      done.add(path);
    };
    for (const path of graph.keys()) visit(path, []);
  });

  it('keeps extension and daemon apart, and the pages of the dashboard out of the daemon', () => {
    for (const file of extension) expect(file.imports.join(' '), file.path).not.toMatch(/daemon\//);
    for (const file of daemon)
      expect(file.imports.join(' '), file.path).not.toMatch(/extension\/|dashboard\/|core\/ui\//);
    for (const file of ui) expect(file.imports.join(' '), file.path).not.toMatch(/daemon\/|extension\//);
  });

  it('has no source file over 400 lines', () => {
    for (const file of [...core, ...ui, ...daemon, ...dashboard, ...extension]) {
      expect(file.text.split('\n').length, file.path).toBeLessThanOrEqual(401);
    }
  });
});
