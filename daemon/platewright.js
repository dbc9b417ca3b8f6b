#!/usr/bin/env node
import './need-node.js';

await import('./src/cli/main.ts');
