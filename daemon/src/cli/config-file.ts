import { readFileSync } from 'node:fs';
import { isAbsolute, join } from 'node:path';
import * as z from 'zod/mini';
import { CommandTrouble } from './command.ts';
import { xdg } from './xdg.ts';

const portSchema = z.int().check(z.minimum(0), z.maximum(65535));

/** Absolute, because commands are typed in many folders, and a service runs in another one. */
const pathSchema = z.string().check(z.refine((path) => isAbsolute(path)));

const fileSchema = z.strictObject({
  data: z.optional(pathSchema),
  store: z.optional(z.string()),
  backups: z.optional(pathSchema),
  port: z.optional(portSchema),
  lan: z.optional(z.boolean()),
  lanPort: z.optional(portSchema),
  cert: z.optional(pathSchema),
  key: z.optional(pathSchema),
  hosts: z.optional(z.array(z.string())),
  basePath: z.optional(z.string()),
  trustedProxies: z.optional(z.array(z.string())),
});

/** What stands in the config file; nothing when there is none. Throws CommandTrouble when it can't be read or understood. */
export function configFile(): z.infer<typeof fileSchema> {
  const path = join(xdg('XDG_CONFIG_HOME', '.config'), 'platewright', 'config.json');
  const content = contentOf(path);
  if (content === null) return {};
  const parsed = fileSchema.safeParse(parseJson(content));
  if (parsed.success) return parsed.data;
  const names = Object.keys(fileSchema.shape).join(', ');
  const [issue] = parsed.error.issues;
  const where = issue?.code === 'unrecognized_keys' ? issue.keys.join(', ') : issue?.path.join('.');
  throw new CommandTrouble(
    `${path} is not as it should be${where ? ` at “${where}”` : ''}: JSON such as {"port": 8787}, with any of ${names}; the path of a file or folder is absolute.`,
  );
}

/** Null when there is no file. One that is there but can't be read is not passed over: it may name another store. */
function contentOf(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (code === 'ENOENT' || code === 'ENOTDIR') return null;
    throw new CommandTrouble(`${path} can't be read (${code}). Let this user read it, or take it away.`);
  }
}

function parseJson(content: string): unknown {
  try {
    return JSON.parse(content);
  } catch {
    return null;
  }
}
