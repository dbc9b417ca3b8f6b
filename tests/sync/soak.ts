import { parseArgs } from 'node:util';
import { digest, live } from './history.ts';

const { values } = parseArgs({
  options: { histories: { type: 'string', default: '100000' }, seed: { type: 'string', default: '1' } },
});
const first = Number(values.seed);
const histories = Number(values.histories);
const began = performance.now();
for (let seed = first; seed < first + histories; seed += 1) {
  const world = await live(seed);
  if (seed > first && (seed - first) % 10_000 === 0) console.log(`${seed - first} histories so far`);
  if (seed === first) console.log(`seed ${seed} comes to ${await digest(world)}`);
}
const ms = performance.now() - began;
console.log(`${histories} histories hold, ${(ms / histories).toFixed(2)} ms each`);
