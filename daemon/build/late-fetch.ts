type Name = 'Headers' | 'Request' | 'Response';

let isLoaded = false;

/**
 * What the built hono and its server find as the classes of Node's fetch. Node loads fetch whole when one of them is first
 * read, a quarter of a start; both read them while they are imported, and make one for few answers.
 */
export const lateFetch = { Headers: late('Headers'), Request: late('Request'), Response: late('Response') };

function late(name: Name) {
  const real = () => {
    isLoaded = true;
    return globalThis[name];
  };
  const isInstance = (value: unknown): boolean =>
    Function.prototype[Symbol.hasInstance].call(Late, value) || (isLoaded && value instanceof real());
  class Late {}
  Object.defineProperty(Late, Symbol.hasInstance, { value: isInstance });
  return new Proxy(Late, { construct: (_, given) => Reflect.construct(real(), given) });
}
