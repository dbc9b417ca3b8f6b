import { changeSchema } from '@platewright/core/changes/change.ts';
import {
  devicesResponseSchema,
  pairingCodeSchema,
  pairingRequestSchema,
  pairRequestSchema,
  pairResponseSchema,
  sessionSchema,
} from '@platewright/core/protocol/devices.ts';
import {
  decisionRequestSchema,
  editsRequestSchema,
  editsResponseSchema,
  problemSchema,
  recordsResponseSchema,
} from '@platewright/core/protocol/records.ts';
import {
  pullResponseSchema,
  pushRequestSchema,
  pushResponseSchema,
  snapshotResponseSchema,
} from '@platewright/core/protocol/sync.ts';
import * as z from 'zod/mini';
import {
  photoQuerySchema,
  pullQuerySchema,
  recordsQuerySchema,
  rosterQuerySchema,
  snapshotQuerySchema,
  viewQuerySchema,
} from './queries.ts';

/** Schemas that have a name in the API's description. */
export const components = {
  Change: changeSchema,
  DecisionRequest: decisionRequestSchema,
  Devices: devicesResponseSchema,
  EditsRequest: editsRequestSchema,
  EditsResponse: editsResponseSchema,
  Health: z.object({ ok: z.boolean(), protocol: z.int() }),
  PairRequest: pairRequestSchema,
  PairResponse: pairResponseSchema,
  PairingCode: pairingCodeSchema,
  PairingRequest: pairingRequestSchema,
  Problem: problemSchema,
  PullResponse: pullResponseSchema,
  PushRequest: pushRequestSchema,
  PushResponse: pushResponseSchema,
  Records: recordsResponseSchema,
  Session: sessionSchema,
  Snapshot: snapshotResponseSchema,
  /** What a page shows, computed from records; its members are the page's own. */
  View: z.looseObject({}),
} as const;

type ComponentName = keyof typeof components;

interface ApiRoute {
  method: 'get' | 'post' | 'put' | 'delete';
  /** As OpenAPI writes it. */
  path: string;
  id: string;
  summary: string;
  open?: true;
  query?: z.ZodMiniObject;
  body?: ComponentName | 'picture';
  /** Name of the answer's schema; `events` for a stream, `metrics` for their text, `none` for no content. */
  answer: ComponentName | 'events' | 'metrics' | 'picture' | 'none';
}

const view = (name: string, summary: string): ApiRoute => ({
  method: 'get',
  path: `/v1/views/${name}`,
  id: `${name}View`,
  summary,
  query: viewQuerySchema,
  answer: 'View',
});

/** Every route of `/v1`: what the API's description says of it. A test holds it against the routes themselves. */
export const api: readonly ApiRoute[] = [
  {
    method: 'get',
    path: '/v1/health',
    id: 'health',
    summary: 'Whether the daemon is there and takes changes',
    open: true,
    answer: 'Health',
  },
  {
    method: 'get',
    path: '/v1/metrics',
    id: 'metrics',
    summary: 'What the daemon counts of itself, for this machine only',
    open: true,
    answer: 'metrics',
  },
  {
    method: 'get',
    path: '/v1/openapi.json',
    id: 'openapi',
    summary: 'This description',
    open: true,
    answer: 'View',
  },
  {
    method: 'post',
    path: '/v1/pair',
    id: 'pair',
    summary: 'Pair a device with a single-use code',
    open: true,
    body: 'PairRequest',
    answer: 'PairResponse',
  },
  {
    method: 'get',
    path: '/v1/session',
    id: 'session',
    summary: 'Who asks, and which athletes there are',
    answer: 'Session',
  },
  {
    method: 'post',
    path: '/v1/push',
    id: 'push',
    summary: 'Send changes; safe to repeat',
    body: 'PushRequest',
    answer: 'PushResponse',
  },
  {
    method: 'get',
    path: '/v1/pull',
    id: 'pull',
    summary: 'Changes after a sequence number',
    query: pullQuerySchema,
    answer: 'PullResponse',
  },
  {
    method: 'get',
    path: '/v1/snapshot',
    id: 'snapshot',
    summary: 'All records page by page, for who can’t begin at the start of the log',
    query: snapshotQuerySchema,
    answer: 'Snapshot',
  },
  {
    method: 'get',
    path: '/v1/records',
    id: 'records',
    summary: 'Records with their fields',
    query: recordsQuerySchema,
    answer: 'Records',
  },
  {
    method: 'post',
    path: '/v1/records',
    id: 'edit',
    summary: 'Make or edit records, all or none',
    body: 'EditsRequest',
    answer: 'EditsResponse',
  },
  view('day', 'A day: targets, beams, meals and what is left of them'),
  view('week', 'The weekly call with its evidence'),
  view('body', 'Weigh-ins, tape and the bodyweight line'),
  view('lifts', 'Lifts with their sets, rep max, trend and next mark'),
  view('plan', 'Phase, targets with their reasons, the days ahead'),
  {
    ...view('roster', 'Athletes with phase, pace and whether a call is due, some at a time'),
    query: rosterQuerySchema,
  },
  view('larder', 'Foods and standing meals'),
  view('habits', 'What each meal of a date usually has, which its typed line is read with'),
  {
    method: 'post',
    path: '/v1/weekly-call',
    id: 'decide',
    summary: 'Accept, change or decline the weekly call of a date',
    body: 'DecisionRequest',
    answer: 'EditsResponse',
  },
  {
    method: 'get',
    path: '/v1/photos/{sha256}',
    id: 'photo',
    summary: 'The picture of an athlete’s photo',
    query: photoQuerySchema,
    answer: 'picture',
  },
  {
    method: 'put',
    path: '/v1/photos/{sha256}',
    id: 'putPhoto',
    summary: 'Keep a picture, to be named by a record of kind photo within a day',
    query: photoQuerySchema,
    body: 'picture',
    answer: 'none',
  },
  { method: 'get', path: '/v1/devices', id: 'devices', summary: 'Paired devices', answer: 'Devices' },
  { method: 'delete', path: '/v1/devices/{id}', id: 'revoke', summary: 'Let a device go', answer: 'none' },
  {
    method: 'post',
    path: '/v1/devices/pairing',
    id: 'issueCode',
    summary: 'A fresh pairing code, with the rights it gives',
    body: 'PairingRequest',
    answer: 'PairingCode',
  },
  {
    method: 'get',
    path: '/v1/events',
    id: 'events',
    summary: 'Server-sent events: the log has grown',
    answer: 'events',
  },
];
