// SPDX-License-Identifier: GPL-3.0-or-later
// All tests of the picture. Exit status 77 says that they were skipped, for there is no browser.
import {after, before} from 'node:test';
import {Bench, chromiumPath} from './browser.mjs';

if (!chromiumPath()) {
  console.log('SKIPPED: no chromium was found, so the turning picture is NOT tested (Debian: apt-get install chromium)');
  process.exit(77);
}

let bench;
before(async () => (bench = await Bench.open()));
after(async () => bench.close());

await import('./parts_test.mjs');
const {shapeTests} = await import('./shapes_test.mjs');
const {faultTests} = await import('./faults_test.mjs');
const {handTests} = await import('./hands_test.mjs');
const {kitTests} = await import('./kits_test.mjs');
await shapeTests(process.env.TUCKWRIGHT_MODULES);
faultTests(() => bench);
handTests(() => bench);
kitTests(() => bench);
