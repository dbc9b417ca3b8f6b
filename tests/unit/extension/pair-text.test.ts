import { describe, expect, it } from 'vitest';
import { permissionFor, readPairText, whyNotTo } from '../../../extension/pairing/read-pair-text.ts';

describe('what is typed to pair', () => {
  it.each([
    ['26WG-XZGD', 'http://127.0.0.1:8787', '26WG-XZGD'],
    ['  26wgxzgd ', 'http://127.0.0.1:8787', '26wgxzgd'],
    ['http://127.0.0.1:8788/#pair=26WG-XZGD', 'http://127.0.0.1:8788', '26WG-XZGD'],
    ['127.0.0.1:9000 26WG-XZGD', 'http://127.0.0.1:9000', '26WG-XZGD'],
    ['localhost:9000 26WG-XZGD', 'http://localhost:9000', '26WG-XZGD'],
    ['26WG-XZGD at 192.168.1.20:8789', 'https://192.168.1.20:8789', '26WG-XZGD'],
    ['shed.local:8789 26WG-XZGD', 'https://shed.local:8789', '26WG-XZGD'],
    ['localhost.example:8789 26WG-XZGD', 'https://localhost.example:8789', '26WG-XZGD'],
    ['http://192.168.1.20:8787 26WG-XZGD', 'http://192.168.1.20:8787', '26WG-XZGD'],
    ['https://home.example/food/ 26WG-XZGD', 'https://home.example/food', '26WG-XZGD'],
  ])('%s', (text, address, code) => {
    expect(readPairText(text)).toEqual({ address, code });
  });

  it.each([
    ...['', '   ', '127.0.0.1:8787', 'a b', 'http://user@host/ 26WG-XZGD'],
    // The daemon would count each as a wrong try.
    ...['hello', 'ATT6', '26WG-XZG', '26WG-XZGDD', '26WG-XZGU', '127.0.0.1:9000 hello'],
  ])('nothing in “%s”', (text) => {
    expect(readPairText(text)).toBeNull();
  });

  it.each([
    'javascript:alert(1) 26WG-XZGD',
    'data:text/html,x 26WG-XZGD',
    'file:///etc/hosts 26WG-XZGD',
    'ftp://home.example 26WG-XZGD',
  ])('javascript: and data: never come out as an address: %s', (text) => {
    expect(readPairText(text)?.address ?? 'http:').toMatch(/^https?:/);
  });

  it('asks for no permission on this machine, and for one host elsewhere', () => {
    expect(permissionFor('http://127.0.0.1:8787')).toBeNull();
    expect(permissionFor('http://localhost:9000')).toBeNull();
    expect(permissionFor('https://home.example/food')).toBe('https://home.example/*');
  });

  it('nothing is sent in clear beyond this machine', () => {
    for (const address of ['http://127.0.0.1:9000', 'http://localhost:9000', 'https://192.168.1.20:8789'])
      expect(whyNotTo(address)).toBeNull();
    for (const address of ['http://192.168.1.20:8787', 'http://localhost.example', 'http://[fd00::1]:8787'])
      expect(whyNotTo(address)).toMatch(/--lan.*https/);
  });
});
