// SPDX-License-Identifier: GPL-3.0-or-later
// Bundles the picture's script into one text, and writes it as a C++ source, so that the library has it:
//   node build.mjs FOLDER-WITH-NODE-MODULES OUTPUT.cpp
import {readFileSync, writeFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {dirname, join} from 'node:path';
import {fileURLToPath} from 'node:url';

const [modules, output] = process.argv.slice(2);
const require = createRequire(join(modules, 'package.json'));
const here = dirname(fileURLToPath(import.meta.url));
const end = '_script_"';
const mostInOneLiteral = 60000; // characters; compilers need not take longer ones

async function bundled() {
  const {build} = require('esbuild');
  const licence = readFileSync(join(modules, 'node_modules/three/LICENSE'), 'utf8').trim();
  const result = await build({
    entryPoints: [join(here, 'src/main.js')],
    nodePaths: [join(modules, 'node_modules')],
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
    target: ['es2020'],
    loader: {'.css': 'text'},
    charset: 'ascii',
    legalComments: 'inline',
    banner: {js: `/*! This script holds three.js, under the MIT licence:\n\n${licence}\n*/`},
  });
  return result.outputFiles[0].text;
}

// What would end the script early in a page, or its text in C++.
function refuseWhatCannotStand(script) {
  for (const word of ['</script', '<!--', `)${end}`]) {
    if (script.toLowerCase().includes(word)) {
      throw new Error(`the bundled script holds ${word}`);
    }
  }
}

function asSource(script) {
  const pieces = [];
  for (let from = 0; from < script.length; from += mostInOneLiteral) {
    pieces.push(`    R"_script_(${script.slice(from, from + mostInOneLiteral)})_script_"`);
  }
  return [
    '// Made by viz/build.mjs.',
    '#include "card/picture_script.hpp"',
    '',
    'std::string_view tuckwright::card::picture_script()',
    '{',
    '    return',
    `${pieces.join('\n')};`,
    '}',
    '',
  ].join('\n');
}

const script = await bundled();
refuseWhatCannotStand(script);
writeFileSync(output, asSource(script));
