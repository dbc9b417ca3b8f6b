/**
 * What a hostile page may try, each as the body of a function that runs in the page. `daemon` is the daemon's origin, and
 * `hostile` that of the page's own server. Each gives the text that it could read, or an empty one.
 */
export const attacks: Readonly<Record<string, string>> = {
  'fetch with credentials': `
    return await (await fetch(daemon + '/v1/session', { credentials: 'include' })).text();`,
  'fetch without CORS': `
    return await (await fetch(daemon + '/v1/records', { credentials: 'include', mode: 'no-cors' })).text();`,
  'write as text/plain without CORS': `
    return await (await fetch(daemon + '/v1/records', { method: 'POST', credentials: 'include', mode: 'no-cors', body: edit })).text();`,
  'write as JSON, which asks first': `
    return await (await fetch(daemon + '/v1/records', { method: 'POST', credentials: 'include', headers: { 'content-type': 'application/json' }, body: edit })).text();`,
  'write as JSON in a Blob without CORS': `
    return await (await fetch(daemon + '/v1/records', { method: 'POST', credentials: 'include', mode: 'no-cors', body: new Blob([edit], { type: 'text/plain;application/json' }) })).text();`,
  'a pairing code': `
    return await (await fetch(daemon + '/v1/devices/pairing', { method: 'POST', credentials: 'include', mode: 'no-cors', body: '{}' })).text();`,
  'a device let go': `
    return await (await fetch(daemon + '/v1/devices/' + device, { method: 'DELETE', credentials: 'include' })).text();`,
  'a guess at the pairing code': `
    return await (await fetch(daemon + '/v1/pair', { method: 'POST', mode: 'no-cors', body: JSON.stringify({ code: '0000-0000', name: 'x', kind: 'dashboard' }) })).text();`,
  'a made-up bearer token': `
    return await (await fetch(daemon + '/v1/session', { headers: { authorization: 'Bearer ' + 'a'.repeat(43) } })).text();`,
  'a redirect that keeps the method': `
    return await (await fetch(hostile + '/redirect', { method: 'POST', credentials: 'include', mode: 'no-cors', body: edit })).text();`,
  XMLHttpRequest: `
    return await new Promise((resolve) => {
      const request = new XMLHttpRequest();
      request.open('GET', daemon + '/v1/session');
      request.withCredentials = true;
      request.onloadend = () => resolve(request.responseText);
      request.send();
    });`,
  'a form as text/plain': `
    return await submitted('post', '/v1/records', 'text/plain', edit.slice(0, -1) + ',"x":"', '"}');`,
  'a form as urlencoded': `
    return await submitted('post', '/v1/devices/pairing', 'application/x-www-form-urlencoded', 'rights', '');`,
  'a form as multipart': `
    return await submitted('post', '/v1/records', 'multipart/form-data', 'edits', edit);`,
  'a form that asks': `
    return await submitted('get', '/v1/records', 'application/x-www-form-urlencoded', 'kind', 'athlete');`,
  'an image': `
    const image = await loaded(Object.assign(new Image(), { src: daemon + '/icon.svg' }));
    return image && image.naturalWidth > 0 ? 'image ' + image.naturalWidth : '';`,
  'an image of records': `
    const image = await loaded(Object.assign(new Image(), { src: daemon + '/v1/records' }));
    return image && image.naturalWidth > 0 ? 'image ' + image.naturalWidth : '';`,
  'a script of records': `
    const script = await loaded(added('script', { src: daemon + '/v1/records' }));
    return script ? 'script' : '';`,
  'the dashboard’s own script': `
    const script = await loaded(added('script', { src: daemon + asset, type: 'module' }));
    return script ? 'script' : '';`,
  'an import': `
    return JSON.stringify(Object.keys(await import(daemon + asset)));`,
  'a style sheet': `
    const sheet = await loaded(added('link', { rel: 'stylesheet', href: daemon + '/v1/records' }));
    return sheet && sheet.sheet ? [...sheet.sheet.cssRules].map((rule) => rule.cssText).join() : '';`,
  'a frame': `
    const frame = added('iframe', { src: daemon + '/' });
    await loaded(frame);
    return frame.contentDocument ? frame.contentDocument.body.textContent : '';`,
  'a frame of records': `
    const frame = added('iframe', { src: daemon + '/v1/records' });
    await loaded(frame);
    return frame.contentDocument ? frame.contentDocument.body.textContent : '';`,
  'an object': `
    const object = added('object', { data: daemon + '/v1/records', type: 'text/html' });
    await loaded(object);
    return object.contentDocument ? object.contentDocument.body.textContent : '';`,
  EventSource: `
    return await new Promise((resolve) => {
      const source = new EventSource(daemon + '/v1/events', { withCredentials: true });
      source.addEventListener('changed', (event) => resolve(event.data));
      source.onerror = () => { source.close(); resolve(''); };
    });`,
  WebSocket: `
    return await new Promise((resolve) => {
      const socket = new WebSocket(daemon.replace('http', 'ws') + '/v1/events');
      socket.onmessage = (event) => resolve(String(event.data));
      socket.onopen = () => resolve('open');
      socket.onerror = socket.onclose = () => resolve('');
    });`,
  sendBeacon: `
    navigator.sendBeacon(daemon + '/v1/records', edit);
    return '';`,
  'a beacon of a Blob': `
    navigator.sendBeacon(daemon + '/v1/devices/pairing', new Blob(['{}'], { type: 'text/plain' }));
    return '';`,
  'a window': `
    const opened = open(daemon + '/');
    await new Promise((next) => setTimeout(next, 300));
    try { return opened && opened.document ? opened.document.body.textContent : ''; } finally { if (opened) opened.close(); }`,
  'a window of records': `
    const opened = open(daemon + '/v1/records');
    await new Promise((next) => setTimeout(next, 300));
    try { return opened && opened.document ? opened.document.body.textContent : ''; } finally { if (opened) opened.close(); }`,
  'a worker': `
    const source = 'fetch("' + daemon + '/v1/session", { credentials: "include" }).then((r) => r.text()).then(postMessage, () => postMessage(""));';
    return await new Promise((resolve) => {
      const worker = new Worker(URL.createObjectURL(new Blob([source])));
      worker.onmessage = (event) => resolve(event.data);
      worker.onerror = () => resolve('');
    });`,
  'a video’s captions': `
    const video = added('video', { crossOrigin: 'use-credentials' });
    const track = Object.assign(document.createElement('track'), { src: daemon + '/v1/records', default: true });
    video.append(track);
    await loaded(track);
    return track.track.cues ? [...track.track.cues].map((cue) => cue.text).join() : '';`,
  'a prefetch': `
    added('link', { rel: 'prefetch', href: daemon + '/v1/records' });
    return '';`,
  'the extension’s page': `
    return await (await fetch('chrome-extension://' + extension + '/popup.html')).text();`,
  'the extension’s page in a frame': `
    const frame = added('iframe', { src: 'chrome-extension://' + extension + '/popup.html' });
    await loaded(frame);
    return frame.contentDocument ? frame.contentDocument.body.textContent : '';`,
  'a message to the extension': `
    if (!window.chrome || !chrome.runtime || !chrome.runtime.sendMessage) return '';
    return JSON.stringify((await chrome.runtime.sendMessage(extension, { name: 'erase', ask: null })) ?? '');`,
};

/** What the attacks share; it stands in front of each. */
export const tools = `
  const added = (name, properties) => {
    const element = Object.assign(document.createElement(name), properties);
    document.body.append(element);
    return element;
  };
  const loaded = (element) => new Promise((resolve) => {
    element.addEventListener('load', () => resolve(element));
    element.addEventListener('error', () => resolve(null));
    setTimeout(() => resolve(null), 700);
  });
  const submitted = async (method, path, enctype, name, value) => {
    const frame = added('iframe', { name: 'f' + Math.random() });
    const form = added('form', { method, action: daemon + path, enctype, target: frame.name });
    form.append(Object.assign(document.createElement('input'), { name, value }));
    const answered = loaded(frame);
    form.submit();
    await answered;
    await new Promise((next) => setTimeout(next, 200));
    return frame.contentDocument ? frame.contentDocument.body.textContent : '';
  };
`;
