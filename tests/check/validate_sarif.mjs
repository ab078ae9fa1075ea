// Holds what `dialplate check --sarif` writes against the schema of SARIF 2.1.0 with a general-purpose JSON
// Schema validator (ajv):
//   node tests/check/validate_sarif.mjs BUILD_DIR
// The schema is the one that the npm package named below carries, 2.1.0-rtm.5. Installs both into
// BUILD_DIR/sarif when they are not there yet.
import {execFileSync, spawnSync} from 'node:child_process';
import {existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {dirname, join, resolve} from 'node:path';
import {fileURLToPath} from 'node:url';

const packages = ['ajv@8.17.1', 'ajv-draft-04@1.0.0', 'ajv-formats@3.0.1',
                  '@microsoft/jest-sarif@1.0.0-beta.0'];
const here = dirname(fileURLToPath(import.meta.url));
const tree = resolve(here, '../..');
const build = resolve(process.argv[2] ?? join(tree, 'build'));
const home = join(build, 'sarif');

if (!existsSync(join(home, 'node_modules/ajv-formats'))) {
    mkdirSync(home, {recursive: true});
    writeFileSync(join(home, 'package.json'), '{"private": true}\n');
    execFileSync('npm', ['install', '--silent', '--no-audit', '--no-fund', '--ignore-scripts',
                         ...packages], {cwd: home, stdio: 'inherit'});
}
const load = createRequire(join(home, 'package.json'));
const Ajv = load('ajv-draft-04').default;
const schema = JSON.parse(readFileSync(
    join(home, 'node_modules/@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json'), 'utf8'));
const ajv = new Ajv({allErrors: true, strict: false,
                     unicodeRegExp: false});  // a pattern of the schema has a lone bracket
load('ajv-formats').default(ajv);
const accepts = ajv.compile(schema);

let failures = 0, checked = 0;
function expect(condition, message) {
    ++checked;
    if (condition) return;
    ++failures;
    console.error(message);
}
function why() {
    return (accepts.errors ?? []).map((e) => `${e.instancePath} ${e.message}`).slice(0, 5).join('; ');
}
function log(files, input) {
    const run = spawnSync(join(build, 'sim/dialplate'), ['check', '--sarif', ...files],
                          {input, encoding: 'utf8', maxBuffer: 1 << 28});
    return JSON.parse(run.stdout);
}

const layouts = readdirSync(join(tree, 'layouts'))
    .filter((name) => name.endsWith('.json') && !name.endsWith('.schema.json'))
    .map((name) => join(tree, 'layouts', name));
const good = readFileSync(join(tree, 'layouts/coast-listener.json'), 'utf8');
const runs = [...layouts.map((file) => [[file], '']),
              [layouts, ''],                                         // several files in one log
              [['-'], good],                                         // standard input
              [['-'], '{"titel": 1}'],                               // mistakes of reading
              [['-'], ''],                                           // nothing at all
              [[join(tree, 'no such, fi\u00e9 %.json')], '']];       // a name to be escaped
for (const [files, input] of runs) {
    const written = log(files, input);
    expect(accepts(written), `${files.join(' ')}: the schema rejects the log: ${why()}`);
    expect(written.runs[0].results.length > 0 || files.length === 1, `${files}: no results`);
}

// The validator would notice: one mistake each.
const spoil = [
    (it) => { it.version = '2.0.0'; },
    (it) => { delete it.runs[0].tool; },
    (it) => { it.runs[0].columnKind = 'bytes'; },
    (it) => { delete it.runs[0].results[0].message; },
    (it) => { it.runs[0].results[0].level = 'must'; },
    (it) => { it.runs[0].results[0].locations[0].physicalLocation.region.startColumn = 0; },
    (it) => { it.runs[0].results[0].line = 3; },
];
for (const make of spoil) {
    const written = log([join(tree, 'layouts/crowded.json')], '');
    make(written);
    expect(!accepts(written), `the schema accepts a log spoilt by ${make}`);
}

console.log(`${checked} expectations, ${failures} not met`);
process.exit(failures === 0 ? 0 : 1);
