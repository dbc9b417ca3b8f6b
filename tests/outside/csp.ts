import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import * as z from 'zod/mini';
import type { Daemon } from '../faults/daemon-process.ts';
import { runWithTools } from './tool.ts';

const MANIFEST = resolve(import.meta.dirname, '../../extension/.output/firefox-mv3/manifest.json');

/** What an extension's pages are held to unless its manifest says otherwise (the WebExtensions platform's default). */
const DEFAULT_OF_EXTENSIONS = "script-src 'self'; object-src 'self'";

const manifestSchema = z.object({
  content_security_policy: z.optional(z.object({ extension_pages: z.optional(z.string()) })),
});
const findings = z.array(z.object({ severity: z.int(), directive: z.string(), description: z.string() }));

/** `HIGH` and `HIGH_MAYBE` of the evaluator's severities. */
const SEVERE = [10, 40];

/** The policies of the dashboard and of the extension's pages. */
export async function checkPolicies({ daemon }: { daemon: Daemon }): Promise<string[]> {
  const dashboard = (await fetch(daemon.url)).headers.get('content-security-policy') ?? '';
  const manifest = manifestSchema.parse(JSON.parse(readFileSync(MANIFEST, 'utf8')));
  const extension = manifest.content_security_policy?.extension_pages ?? DEFAULT_OF_EXTENSIONS;
  return [
    ...severeFindings(dashboard).map((line) => `dashboard, ${line}`),
    ...severeFindings(extension).map((line) => `extension, ${line}`),
  ];
}

function severeFindings(policy: string): string[] {
  const found = runWithTools(`
    import { CspEvaluator } from 'csp_evaluator/dist/evaluator.js';
    import { CspParser } from 'csp_evaluator/dist/parser.js';
    const { csp } = new CspParser(${JSON.stringify(policy)});
    console.log(JSON.stringify(new CspEvaluator(csp).evaluate()));
  `);
  return findings
    .parse(JSON.parse(found))
    .filter(({ severity }) => SEVERE.includes(severity))
    .map(({ directive, description }) => `${directive}: ${description}`);
}
