#!/usr/bin/env node
import { keepCompiled } from './compiled.ts';

keepCompiled();
// As CommonJS, which it is built as, it can't await here.
void import('./command-line.ts').then(async ({ runCommandLine }) => {
  process.exitCode = await runCommandLine(process.argv.slice(2));
});
