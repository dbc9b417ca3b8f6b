// Not in TypeScript: an older Node stumbles over the first such file, and says nothing that helps.
const LEAST = 24;

if (Number.parseInt(process.version.slice(1), 10) < LEAST) {
  process.stderr.write(
    `Platewright needs Node ${LEAST} or newer, and this is ${process.version}. Update Node, and run npm ci once more.\n`,
  );
  process.exit(1);
}
