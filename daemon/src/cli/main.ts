import { keepCompiled } from './compiled.ts';

keepCompiled();
let isTaken = true;
// A reader that went away ends no daemon; a command whose output nobody takes has not done its work.
process.stdout.on('error', () => {
  isTaken = false;
  process.exitCode = 1;
});
process.stderr.on('error', () => undefined);
// As CommonJS, which it is built as, it can't await here.
void import('./command-line.ts').then(async ({ runCommandLine }) => {
  const code = await runCommandLine(process.argv.slice(2));
  process.exitCode = isTaken ? code : 1;
});
