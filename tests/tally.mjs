// Runs every suite and counts what passed. One that crashes, hangs or holds no test has failed, and takes no other with it.
//   node tests/tally.mjs [WORD] [--again]     only the suites whose name holds WORD; --again runs what is unchanged too
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { memory } from './unchanged.mjs';

const tests = dirname(fileURLToPath(import.meta.url));
const build = join(tests, '../build');
const reports = join(build, 'reports');
const again = process.argv.includes('--again');
const wanted = process.argv.slice(2).find(word => word !== '--again') ?? '';
const longest = 10 * 60 * 1000;

const run = (command, words) => new Promise(resolve => {
  const child = spawn(command, words, { cwd: join(tests, '..'), stdio: ['ignore', 'pipe', 'pipe'], timeout: longest });
  let text = '';
  child.stdout.on('data', part => { text += part; });
  child.stderr.on('data', part => { text += part; });
  child.on('error', problem => resolve({ code: -1, text: String(problem) }));
  child.on('close', (code, signal) => resolve({ code: code ?? signal, text }));
});

// Each suite is {name, start, rests}; start gives {passed, failed, text}. `rests` is all it rests on; nothing where it always runs.
const top = (...path) => join(tests, '..', ...path);
const data = [...readdirSync(tests).filter(name => name !== 'node_modules').map(name => join(tests, name)), ...['pwa/demo', 'pwa/desk/tables', 'i18n'].map(path => top(path))];
const module = [top('build/wasm/wasm'), top('wasm')];
const programs = [top('build/native/stopgap'), ...module, top('tests/package-lock.json')];

// A journey rests on the site, on what it asks beside it, and on the outside programs in the version the system holds. The main
// job and the start without network are walked through every time all the same.
const outside = ['chromium-headless-shell', 'firefox-esr', 'webkit2gtk-driver', 'poppler-utils', 'zbar-tools'].map(name => `/var/lib/dpkg/info/${name}.md5sums`);
const walked = [...programs, ...data, ...outside, top('build/site'), top('build/plain'), top('pwa/serve.mjs'), top('pwa/headers.txt')];
const always = /journeys\/(stubborn_high|offline)\./;

const gtestReport = async ([command, ...program], suites, report) => {
  const { code, text } = await run(command, [...program, `--gtest_filter=${suites.map(suite => `${suite}.*`).join(':')}`, `--gtest_output=json:${report}`]);
  return { code, text, said: existsSync(report) ? JSON.parse(readFileSync(report, 'utf8')) : undefined };
};
const gtest = (side, program, suite) => ({
  name: `${side} ${suite}`,
  suite,
  rests: [program.at(-1), ...(side === 'wasm' ? [program.at(-1).replace(/js$/, 'wasm')] : []), ...data],
  start: async () => {
    const { code, text, said } = await gtestReport(program, [suite], join(reports, `${side}-${suite.replaceAll('/', '-')}.json`));
    if (!said) return { passed: 0, failed: 1, text: `${text}\nIt ended without a report (${code}).` };
    return { passed: said.tests - said.failures, failed: said.failures || (code === 0 ? 0 : 1), text };
  },
});

const gtestSuites = async (side, program) => {
  const { code, text } = await run(program[0], [...program.slice(1), '--gtest_list_tests']);
  const suites = text.split('\n').filter(line => /^\S+\.(\s|$)/.test(line)).map(line => line.replace(/\.(\s.*)?$/, ''));
  if (code === 0 && suites.length) return suites.map(suite => gtest(side, program, suite));
  return [{ name: `${side} list of suites`, start: () => ({ passed: 0, failed: 1, text }) }];
};

// node compiles the module anew in each process, which costs more than its tests. So they run in one process first; unless it
// ends well and reports every suite as passed, each runs in a process of its own after all, which says which one failed.
const allInOne = (side, program, suites) => {
  if (suites.length < 2 || !suites.every(({ suite }) => suite)) return suites;
  let once;
  const together = () => (once ??= gtestReport(program, suites.map(({ suite }) => suite), join(reports, `${side}.json`)));
  return suites.map(alone => ({
    name: alone.name,
    rests: alone.rests,
    start: async () => {
      const { code, text, said } = await together();
      const mine = said?.testsuites.find(({ name }) => name === alone.suite);
      return code === 0 && mine && !mine.failures && !said.failures ? { passed: mine.tests, failed: 0, text } : alone.start();
    },
  }));
};

const count = (text, word) => Number.parseInt(text.match(new RegExp(`^# ${word} (\\d+)$`, 'm'))?.[1] ?? '0', 10);
const nodeTest = (path, rests = []) => ({
  name: `node ${path}`,
  rests,
  start: async () => {
    const { code, text } = await run('node', ['--test-reporter=tap', join(tests, path)]);
    const failed = count(text, 'fail') + count(text, 'cancelled');
    return { passed: count(text, 'pass'), failed: failed || (code === 0 ? 0 : 1), text };
  },
});

// A script that compares in bulk says itself how much it counted, in its last line.
const script = (path, rests) => ({
  name: `node ${path}`,
  rests,
  start: async () => {
    const { code, text } = await run('node', [join(tests, path)]);
    const [, passed = '0', failed = '0'] = text.trimEnd().split('\n').at(-1).match(/^(\d+) passed, (\d+) failed$/) ?? [];
    return { passed: Number.parseInt(passed, 10), failed: Number.parseInt(failed, 10) || (code === 0 ? 0 : 1), text };
  },
});

const under = folder => existsSync(join(tests, folder)) ? readdirSync(join(tests, folder), { withFileTypes: true })
  .flatMap(entry => entry.isDirectory() ? under(join(folder, entry.name)) : [join(folder, entry.name)])
  .filter(path => path.endsWith('.test.mjs')).sort() : [];

let passed = 0, failed = 0;
// Of a failed suite only what failed is worth reading.
const short = text => text.replace(/^(\s*)ok .*\n(?:\1  ---\n(?:\1  .*\n)*?\1  \.\.\.\n)?/gm, '').replace(/^\s*# Subtest.*\n|^\[(?: RUN     |       OK) .*\n/gm, '').trimEnd();

const book = memory(join(build, 'passed.json'), again);
const finish = async ({ name, start, rests = [] }) => {
  const begun = Date.now();
  const before = book.passed(name, rests);
  if (before !== undefined) {
    passed += before;
    console.log(`ok     ${name}: ${before} passed, 0 failed (unchanged since)`);
    return;
  }
  const result = await start();
  if (result.passed + result.failed === 0) Object.assign(result, { failed: 1, text: `${result.text}\nIt holds no test.` });
  passed += result.passed;
  failed += result.failed;
  book.keep(name, rests, result);
  if (result.failed) console.log(short(result.text));
  console.log(`${result.failed ? 'FAILED' : 'ok    '} ${name}: ${result.passed} passed, ${result.failed} failed (${((Date.now() - begun) / 1000).toFixed(1)} s)`);
};
// A browser test waits half its time, so one lane more than there are processors takes those, and one lane the rest; whoever is
// done helps with what is left.
const runAll = async (journeys, others) => {
  const lane = async suites => { for (let next; (next = suites.shift());) await finish(next); };
  const browserLanes = Array.from({ length: availableParallelism() + 1 }, () => lane(journeys).then(() => lane(others)));
  await Promise.all([...browserLanes, lane(others)]);
};

rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });
const journeys = under('pwa').filter(path => path.includes('journeys/'));
const native = [join(build, 'native/tests/stopgap-tests')], wasm = ['node', join(build, 'wasm/tests/stopgap-tests.js')];
const chosen = suites => suites.filter(({ name }) => name.includes(wanted));
await runAll(chosen(journeys.map(path => nodeTest(path, always.test(path) ? [] : walked))), chosen([
  ...await gtestSuites('native', native),
  ...allInOne('wasm', wasm, chosen(await gtestSuites('wasm', wasm))),
  ...under('house').map(path => nodeTest(path)),
  ...under('second_reading').map(path => nodeTest(path, [...programs, ...data])),
  ...under('clinic').map(path => nodeTest(path, [...programs, ...data])),
  ...under('paper').map(path => nodeTest(path, [...programs, ...data])),
  ...under('pwa').filter(path => !journeys.includes(path)).map(path => nodeTest(path)),
  ...(existsSync(join(tests, 'same_answers.mjs')) ? [script('same_answers.mjs', [...programs, ...data])] : []),
]));

console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed || !passed ? 1 : 0;
