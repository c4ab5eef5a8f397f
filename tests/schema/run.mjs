// SPDX-License-Identifier: GPL-3.0-or-later
// The JSON Schemas in kits/ against all samples, all files that the reader takes, and all that it refuses.
import assert from 'node:assert/strict';
import {readdirSync, readFileSync} from 'node:fs';
import {basename, dirname, join, relative} from 'node:path';
import {test} from 'node:test';
import {checked, source} from './check.mjs';
import {beyond} from './beyond.mjs';

const kits = join(source, 'kits');
const corpus = join(source, 'tests/corpus/kits');
const filesIn = (folder) =>
  readdirSync(folder, {recursive: true}).filter((name) => name.endsWith('.yaml')).map((name) => join(folder, name));
const schemaFor = (text) => (/^shelf: (?!.*\.ya?ml)/m.test(text) && !/^kit:/m.test(text) ? 'shelf.schema.json' : 'kit.schema.json');

function accepted(path) {
  const bytes = readFileSync(path);
  const {syntax, faults} = checked(bytes, schemaFor(bytes.toString()));
  assert.deepEqual([...syntax, ...faults], [], path);
}

test('every sample is accepted, and its first line names the schema', () => {
  const samples = filesIn(kits);
  assert.ok(samples.length >= 20);
  for (const path of samples) {
    accepted(path);
    const text = readFileSync(path, 'utf8');
    const wanted = relative(dirname(path), join(kits, schemaFor(text)));
    assert.equal(text.slice(0, text.indexOf('\n')), `# yaml-language-server: $schema=${wanted}`, path);
  }
});

test('what the reader takes is accepted', () => {
  const sound = filesIn(join(corpus, 'sound'));
  assert.ok(sound.length >= 10);
  sound.forEach(accepted);
});

test('at least nine in ten structurally faulty files are refused', (context) => {
  const seen = {syntax: 0, refused: 0, missed: [], beyond: 0, beyondRefused: 0};
  for (const path of filesIn(join(corpus, 'faulty'))) {
    const name = basename(path, '.yaml');
    const {syntax, faults} = checked(readFileSync(path), 'kit.schema.json');
    if (syntax.length > 0) {
      seen.syntax += 1;
    } else if (name in beyond) {
      seen.beyond += 1;
      seen.beyondRefused += faults.length > 0 ? 1 : 0;
    } else if (faults.length > 0) {
      seen.refused += 1;
    } else {
      seen.missed.push(name);
    }
  }
  const structural = seen.refused + seen.missed.length;
  context.diagnostic(`no YAML ${seen.syntax}; structural ${structural}, refused ${seen.refused}, missed ${seen.missed}; ` +
                     `beyond a schema ${seen.beyond}, refused all the same ${seen.beyondRefused}`);
  assert.ok(structural >= 60);
  assert.ok(seen.refused >= 0.9 * structural, `missed: ${seen.missed}`);
});

test('what is called beyond a schema is in the corpus, and has a reason', () => {
  const names = new Set(filesIn(join(corpus, 'faulty')).map((path) => basename(path, '.yaml')));
  for (const [name, why] of Object.entries(beyond)) {
    assert.ok(names.has(name), name);
    assert.ok(why.length > 5, name);
  }
});

// One fault each, in a kit that is accepted without it.
const item = '{id: pot, weight: 140, cylinder: {diameter: 110, height: 90}, inside: {wall: 0.8, base: 1}}';
const faultless = `kit: Tea\nclearance: 0.5 mm\nitems:\n  - ${item}\n`;
const faults = [
  ['weight: 140', 'wieght: 140'], ['weight: 140', 'weight: 140 mm'], ['weight: 140', 'weight: 1,4'],
  ['weight: 140, ', ''], ['id: pot', 'id: my pot'], ['diameter: 110', 'diameter: 0'],
  ['height: 90', 'height: -90 mm'], ['diameter: 110, ', ''], ['wall: 0.8, ', ''], [', base: 1', ''],
  ['base: 1', 'base: 1, opens: both'], ['base: 1', 'base: 1, lid: owns'], ['base: 1', 'base: 1, cylinder: {diameter: 90, height: 80}'],
  ['weight: 140', 'weight: 140, count: 0'], ['weight: 140', 'weight: 140, box: {length: 1, width: 1, height: 1}'],
  ['weight: 140', 'weight: 140, kind: fule'], ['weight: 140', 'weight: 140, upright: perhaps'],
  ['weight: 140', 'weight: 140, contents: {what: tea}'], ['0.5 mm', '60 mm'], ['0.5 mm', '0.5 g'], ['kit: Tea\n', ''],
  [`items:\n  - ${item}`, 'items: []'], ['clearance', 'clearence'], ['id: pot', 'from: pot'],
];

test('single faults are refused', () => {
  assert.deepEqual(checked(Buffer.from(faultless), 'kit.schema.json'), {syntax: [], faults: []});
  for (const [before, after] of faults) {
    const text = faultless.replace(before, after);
    assert.notEqual(text, faultless);
    assert.notEqual(checked(Buffer.from(text), 'kit.schema.json').faults.length, 0, `${before} -> ${after}`);
  }
});

test('numbers are taken as the reader takes them', () => {
  for (const size of ['110', '110.', '.5 in', '+110', '110mm', '11 cm', '4.3 in ±0.02 in', '110 +-0.5', '110 +/- 1 mm', '4 3/8 in', '33/8 in ± 1/16']) {
    const text = faultless.replace('diameter: 110', `diameter: ${size}`);
    assert.deepEqual(checked(Buffer.from(text), 'kit.schema.json').faults, [], size);
  }
  for (const size of ['110 inches', '1 1/3 in', '0/2 in', '1/2/3 in', '0.0 mm', '110 ±', '1e3 mm', 'wide', '""']) {
    const text = faultless.replace('diameter: 110', `diameter: ${size}`);
    assert.notEqual(checked(Buffer.from(text), 'kit.schema.json').faults.length, 0, size);
  }
});
