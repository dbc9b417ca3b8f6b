/** Rights of devices and of the codes that make them; until then every device was an owner's. */
export const rightsAndChecksums = {
  version: 2,
  sql: `
    ALTER TABLE devices ADD COLUMN athlete TEXT;
    ALTER TABLE devices ADD COLUMN access TEXT NOT NULL DEFAULT 'write' CHECK (access IN ('write', 'read'));
    ALTER TABLE codes ADD COLUMN athlete TEXT;
    ALTER TABLE codes ADD COLUMN access TEXT NOT NULL DEFAULT 'write' CHECK (access IN ('write', 'read'));
  `,
} as const;
