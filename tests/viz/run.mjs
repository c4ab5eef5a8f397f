// SPDX-License-Identifier: GPL-3.0-or-later
// All tests of the picture. Exit status 77 says that they were skipped, for there is no browser.
import {after} from 'node:test';
import {Bench, chromiumPath} from './browser.mjs';
import {faultTests} from './faults_test.mjs';
import {handTests} from './hands_test.mjs';
import {kitTests} from './kits_test.mjs';
import {partTests} from './parts_test.mjs';
import {bundledShapes, shapeTests} from './shapes_test.mjs';

if (!chromiumPath()) {
  console.log('SKIPPED: no chromium was found, so the turning picture is NOT tested (Debian: apt-get install chromium)');
  process.exit(77);
}

// All that takes time comes first: once tests are there, they are run, and what follows them is done at their end.
const shapes = await bundledShapes(process.env.TUCKWRIGHT_MODULES);
const bench = await Bench.open();
after(() => bench.close());
partTests();
shapeTests(shapes);
faultTests(() => bench);
handTests(() => bench);
kitTests(() => bench);
