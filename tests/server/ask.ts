import { Agent as PlainAgent, request as plain } from 'node:http';
import { Agent, request as secure } from 'node:https';

/** One request to a port of this machine, with exactly these headers. */
export interface Asked {
  port: number;
  tls?: boolean;
  method?: string;
  path: string;
  headers?: Record<string, string>;
  body?: string | Uint8Array;
}

export interface Told {
  status: number;
  headers: Record<string, string | string[] | undefined>;
  text: string;
}

/** An answer that takes longer is taken for none. */
const PATIENCE_MS = 20_000;

const agents = {
  plain: new PlainAgent({ keepAlive: true, maxSockets: 32 }),
  // The certificate is one that was just made; what it protects from is tested where it is the point.
  tls: new Agent({ keepAlive: true, maxSockets: 32, rejectUnauthorized: false }),
};

/** Asks without any rule of fetch on Host, Origin or Sec-Fetch. */
export function ask({ port, tls = false, method = 'GET', path, headers = {}, body }: Asked): Promise<Told> {
  return new Promise((resolve, reject) => {
    const agent = tls ? agents.tls : agents.plain;
    const signal = AbortSignal.timeout(PATIENCE_MS);
    const options = { host: '127.0.0.1', port, method, path, headers, agent, signal };
    const request = (tls ? secure : plain)(options, (response) => {
      response.setEncoding('utf8');
      let text = '';
      response.on('data', (chunk: string) => {
        text += chunk;
      });
      response.once('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, text }),
      );
      response.once('error', reject);
    });
    request.once('error', reject);
    request.end(body);
  });
}

export function hangUp(): void {
  agents.plain.destroy();
  agents.tls.destroy();
}
