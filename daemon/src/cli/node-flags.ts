/**
 * How Node runs the daemon, as `npm start` and a service start it, to hold less memory: a young generation of 1 MB instead
 * of 64, and one thread beside the main one instead of four. Both are there before any script, so only the command line
 * can say it.
 */
export const NODE_FLAGS = ['--max-semi-space-size=1', '--v8-pool-size=1'] as const;

/**
 * From now on the heap is cleared before it grows, and one compiler does for what is hot. V8 asks for both each time; as
 * flags of the start they would turn away what Node has compiled beforehand, which is a third of the start's time.
 */
export async function holdLittle(): Promise<void> {
  const { setFlagsFromString } = await import('node:v8');
  for (const flag of ['--optimize-for-size', '--no-maglev']) setFlagsFromString(flag);
}
