import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod/mini';
import { CommandTrouble } from './command.ts';
import { xdg } from './xdg.ts';

const portSchema = z.int().check(z.minimum(0), z.maximum(65535));

const fileSchema = z.strictObject({
  data: z.optional(z.string()),
  store: z.optional(z.string()),
  backups: z.optional(z.string()),
  port: z.optional(portSchema),
  lan: z.optional(z.boolean()),
  lanPort: z.optional(portSchema),
  cert: z.optional(z.string()),
  key: z.optional(z.string()),
  hosts: z.optional(z.array(z.string())),
  basePath: z.optional(z.string()),
  trustedProxies: z.optional(z.array(z.string())),
});

/** What stands in the config file; nothing when there is none. Throws CommandTrouble when it can't be understood. */
export function configFile(): z.infer<typeof fileSchema> {
  const path = join(xdg('XDG_CONFIG_HOME', '.config'), 'platewright', 'config.json');
  let content: string;
  try {
    content = readFileSync(path, 'utf8');
  } catch {
    return {};
  }
  const parsed = fileSchema.safeParse(parseJson(content));
  if (parsed.success) return parsed.data;
  const names = Object.keys(fileSchema.shape).join(', ');
  throw new CommandTrouble(
    `${path} is not as it should be: JSON such as {"port": 8787}, with any of ${names}.`,
  );
}

function parseJson(content: string): unknown {
  try {
    return JSON.parse(content);
  } catch {
    return null;
  }
}
