#!/usr/bin/env node
import { keepCompiled } from './compiled.ts';

keepCompiled();
const { runCommandLine } = await import('./command-line.ts');
process.exitCode = await runCommandLine(process.argv.slice(2));
