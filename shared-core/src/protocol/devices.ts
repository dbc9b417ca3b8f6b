import * as z from 'zod/mini';
import { idSchema, instantSchema, nameSchema } from '../records/scalars.ts';

const deviceKindSchema = z.enum(['extension', 'dashboard']);

/** What a device may see and do. An owner, `{ athlete: null, access: 'write' }`, also manages devices. */
export const rightsSchema = z.object({
  /** The one athlete whose records it sees; null for all athletes. */
  athlete: z.nullable(idSchema),
  access: z.enum(['write', 'read']),
});
export type Rights = z.infer<typeof rightsSchema>;

/** `POST /v1/pair`: a single-use code from the daemon makes a device. No token is needed. */
export const pairRequestSchema = z.object({
  code: z.string().check(z.minLength(4), z.maxLength(20)),
  name: nameSchema,
  kind: deviceKindSchema,
});

/** An extension gets its token once, here; a dashboard gets it as a cookie and never sees it. */
export const pairResponseSchema = z.object({
  device: z.string(),
  store: z.string(),
  token: z.optional(z.string()),
  /** SHA-256 of the daemon's public key in hex, empty without TLS: goes into the check that both ends show. */
  key: z.string(),
});

/** One row of `GET /v1/devices`. */
const deviceSchema = z.object({
  id: z.string(),
  name: z.string(),
  kind: deviceKindSchema,
  rights: rightsSchema,
  pairedAt: instantSchema,
  lastSeenAt: z.nullable(instantSchema),
  /** What the device showed when it was paired. */
  check: z.string(),
  revoked: z.boolean(),
  /** The one that asks. */
  current: z.boolean(),
});
export const devicesResponseSchema = z.object({ devices: z.array(deviceSchema) });

/** `POST /v1/devices/pairing`: a fresh code, shown to pair another device; without `rights` it makes an owner's. */
export const pairingRequestSchema = z.object({ rights: z.optional(rightsSchema) });
export const pairingCodeSchema = z.object({ code: z.string(), expiresAt: instantSchema });

/** `GET /v1/session`: who asks, and what there is. */
export const sessionSchema = z.object({
  device: z.string(),
  name: z.string(),
  store: z.string(),
  demo: z.boolean(),
  rights: rightsSchema,
  /** Those whose records this device may see. */
  athletes: z.array(z.object({ id: idSchema, name: z.string() })),
  /** Today's date in the athlete's zone comes from views; this is the daemon's instant. */
  now: instantSchema,
});

export type Device = z.infer<typeof deviceSchema>;
export type Session = z.infer<typeof sessionSchema>;
export type PairingCode = z.infer<typeof pairingCodeSchema>;
