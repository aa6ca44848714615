// Everything the page fetches is compared with the digest that its release names. The page carries the list itself (pwa/site.mjs), so
// the browser finds a file that was altered on its way, or on the disk, before one byte of it is used.
// One line a file: its path, its digest, and the scripts it needs beside it.
let known;
const list = () => document.querySelector('meta[name="parts"]').content.trim().split('\n').map(line => line.split(' '));
const part = path => {
  known ??= new Map(list().map(([name, digest, ...needs]) => [name, { digest, needs }]));
  if (!known.has(path)) throw new Error(`${path} is no part of this release.`);
  return known.get(path);
};

// What is kept on the way may be damaged where the file itself is whole: it is asked for once more, past everything that is kept.
export const fetched = async path => {
  const { digest } = part(path);
  const ask = cache => fetch(path, { integrity: digest, cache });
  const answer = await ask('default').catch(() => ask('reload'));
  if (!answer.ok) throw new Error(path);
  return answer;
};
export const textOf = async path => (await fetched(path)).text();

const laid = (rel, path) => new Promise((resolve, reject) => {
  const link = document.createElement('link');
  const missed = () => { link.remove(); reject(new Error(`${path} did not arrive whole.`)); };
  Object.assign(link, { rel, href: path, integrity: part(path).digest, onload: resolve, onerror: missed });
  document.head.append(link);
});
export const styled = path => laid('stylesheet', path);

// An import takes no digest. A script that was loaded ahead with one is not fetched a second time, so what is imported then is what
// was compared.
const canLoadAhead = () => document.createElement('link').relList.supports('modulepreload');
// What the page itself names, it names with its digest.
const namedHere = path => document.querySelector(`script[src="${path}"]`);
const ready = new Map();
const whole = path => {
  if (!ready.has(path)) ready.set(path, laid('modulepreload', path).catch(problem => { ready.delete(path); throw problem; }));
  return ready.get(path);
};
// Some load ahead without comparing: so the file itself is fetched and compared too. Where the keeper serves the page, both are the same.
export const script = async (path, load) => {
  const needed = [path, ...part(path).needs].filter(name => !namedHere(name));
  await Promise.all(needed.map(fetched));
  if (canLoadAhead()) await Promise.all(needed.map(whole));
  return load();
};
