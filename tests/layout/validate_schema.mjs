// Holds layouts/layout.schema.json against a general-purpose JSON Schema validator (ajv, from npm):
//   node tests/layout/validate_schema.mjs BUILD_DIR
// Every example and good fixture is accepted, every broken one is rejected if a schema can tell; every
// member is described. Installs ajv into BUILD_DIR/schema when it is not there yet.
import {execFileSync} from 'node:child_process';
import {existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {dirname, join, resolve} from 'node:path';
import {fileURLToPath} from 'node:url';

const ajvVersion = '8.17.1';
const here = dirname(fileURLToPath(import.meta.url));
const tree = resolve(here, '../..');
const home = resolve(process.argv[2] ?? join(tree, 'build'), 'schema');

function load(path) { return JSON.parse(readFileSync(path, 'utf8')); }
function files(folder) {
    if (!existsSync(folder)) return [];
    return readdirSync(folder).filter((name) => name.endsWith('.json')).sort()
        .map((name) => join(folder, name));
}

if (!existsSync(join(home, 'node_modules/ajv'))) {
    mkdirSync(home, {recursive: true});
    writeFileSync(join(home, 'package.json'), '{"private": true}\n');
    execFileSync('npm', ['install', '--silent', '--no-audit', '--no-fund', `ajv@${ajvVersion}`],
                 {cwd: home, stdio: 'inherit'});
}
const Ajv = createRequire(join(home, 'package.json'))('ajv').default;

const schemaPath = join(tree, 'layouts/layout.schema.json');
const schema = load(schemaPath);
// Strict: an unknown keyword is a mistake in the schema. Types stand in what is referred to.
const ajv = new Ajv({allErrors: true, strict: true, strictTypes: false, strictRequired: false});
const accepts = ajv.compile(schema);

let failures = 0, checked = 0;
function expect(condition, message) {
    ++checked;
    if (condition) return;
    ++failures;
    console.error(message);
}
function why(validate) {
    return (validate.errors ?? []).map((e) => `${e.instancePath} ${e.message}`).slice(0, 5).join('; ');
}

// Every member has a sentence, every object with members allows no others.
function walk(node, path) {
    if (node === null || typeof node !== 'object') return;
    if (Array.isArray(node)) return node.forEach((each, i) => walk(each, `${path}/${i}`));
    // What stands under if, then and the like only adds a condition to a described object.
    const condition = node.description === undefined && path !== '#';
    if (node.properties && !condition) {
        // An item or value is closed by the definition that its kind or type leads to.
        expect(node.additionalProperties === false || Array.isArray(node.allOf),
               `schema ${path}: an object with members lets others in`);
        for (const [name, member] of Object.entries(node.properties)) {
            const described = member.$ref
                ? schema.definitions[member.$ref.split('/').pop()].description : member.description;
            expect(typeof described === 'string' && described.length > 5,
                   `schema ${path}/properties/${name}: no description`);
        }
    }
    for (const [name, child] of Object.entries(node)) walk(child, `${path}/${name}`);
}
walk(schema, '#');

for (const path of [...files(join(tree, 'layouts')), ...files(join(here, 'fixtures/good'))]) {
    if (path.endsWith('.schema.json')) continue;
    expect(accepts(load(path)), `${path}: the schema rejects it: ${why(accepts)}`);
}
for (const [file, list, definition] of [['displays.json', 'displays', 'display'],
                                        ['mcus.json', 'mcus', 'mcu']]) {
    const part = ajv.compile({$ref: '#/definitions/' + definition, definitions: schema.definitions});
    for (const each of load(join(tree, 'layouts/parts', file))[list]) {
        expect(part(each), `layouts/parts/${file}: the schema rejects ${each.name}: ${why(part)}`);
    }
}
for (const path of files(join(here, 'fixtures/broken'))) {
    expect(!accepts(load(path)), `${path}: the schema accepts it`);
}

// One mistake each: see layout_mistakes_test.cpp.
const table = load(join(here, 'fixtures/mistakes.json'));
const base = readFileSync(join(here, 'fixtures/good/everything.json'), 'utf8');
for (const row of table.mistakes) {
    const text = base.replace(row.find, () => row.replace.replace('@', ''));
    expect(text !== base, `mistakes.json: ${row.find} is not in the base`);
    expect(accepts(JSON.parse(text)) === (row.schema === 'cannot tell'),
           `mistakes.json: ${row.replace}: the schema ${row.schema === 'cannot tell' ? 'rejects' : 'accepts'} it ${why(accepts)}`);
}

console.log(`${checked} expectations, ${failures} not met`);
process.exit(failures === 0 ? 0 : 1);
